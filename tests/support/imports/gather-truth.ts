import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { Helper } from 'dxf';
import { unzipSync } from 'fflate';
import { trueLayer } from './gerber-truth.ts';
import { designTruth, netlistTruth } from './list-truth.ts';
import { type At, chainBoxes, rectOf, type Side, type TruePad, type Truth } from './truth.ts';

interface TextFile {
  readonly name: string;
  readonly text: string;
}

const LAYER = /\.(g[a-z0-9]{2}|gbr)$/i;
/** By the endings in use; a layer that says neither may still show an outline. */
const PAD_ROLES: readonly [RegExp, Side][] = [
  [/\.(gtl|gtp|gts)$/i, 'top'],
  [/\.(gbl|gbp|gbs)$/i, 'bottom'],
];
const COPPER = /\.g[tb]l$/i;
const PASTE = /\.g[tb]p$/i;
const INNER = /\.(g\d+|gp\d+|gto|gbo)$/i;
const TELLING = /\.(gko|gml|gm1)$|outline|edge|profile/i;

function textsOf(paths: readonly string[]): TextFile[] {
  const decoder = new TextDecoder('latin1');
  return paths.flatMap((path): TextFile[] => {
    const bytes = new Uint8Array(readFileSync(path));
    if (!/\.zip$/i.test(path)) return [{ name: basename(path), text: decoder.decode(bytes) }];
    const members = unzipSync(bytes, { filter: ({ name }) => LAYER.test(name) });
    return Object.entries(members).map(([name, content]) => ({ name, text: decoder.decode(content) }));
  });
}

/** Everything outside readers can say of these files. */
export function gatherTruth(paths: readonly string[]): Truth {
  const files = textsOf(paths);
  const layers = files
    .filter(({ name }) => LAYER.test(name) && !INNER.test(name))
    .map(({ name, text }) => ({
      name,
      side: PAD_ROLES.find(([ending]) => ending.test(name))?.[1] ?? null,
      ...trueLayer(text),
    }));
  const chains = layers
    .filter(({ side }) => side === null)
    .flatMap(({ name, chains: boxes }) => boxes.map((box) => ({ file: name, box, telling: TELLING.test(name) })));
  const bare = bareOf(layers);
  const named = namedOf(layers.filter(({ name }) => COPPER.test(name)));
  const bodies = new Map();
  if (named.size > 0) return { pads: named, padsBy: 'Gerber X2', bare, bodies, chains };
  for (const { name, text } of files) {
    if (/\.(d356|ipc)$/i.test(name)) return { pads: netlistTruth(text), padsBy: 'IPC-D-356', bare, bodies, chains };
    if (!/<IPC-2581\b/.test(text.slice(0, 4000))) continue;
    const design = designTruth(text);
    const box = design.profile ? [{ file: name, box: design.profile, telling: true }] : [];
    return { pads: design.pads, padsBy: 'IPC-2581', bare, bodies: design.bodies, chains: box };
  }
  return { pads: new Map(), padsBy: null, bare, bodies, chains: [...chains, ...files.flatMap(drawnChains)] };
}

/** Chains of a DXF drawing as a general-purpose reader of it sees them. */
function drawnChains({ name, text }: TextFile): Truth['chains'] {
  if (!/\.dxf$/i.test(name)) return [];
  const lines = new Helper(text).toPolylines().polylines.map(({ vertices }) => {
    const points = vertices.map(([x, y]) => ({ x, y }));
    return { ends: [points[0], points[points.length - 1]] as [At, At], box: rectOf(points) };
  });
  return chainBoxes(lines).map((box) => ({ file: name, box, telling: true }));
}

type Layer = ReturnType<typeof trueLayer> & { readonly name: string; readonly side: Side | null };

function namedOf(layers: readonly Layer[]): Map<string, TruePad[]> {
  const list = new Map<string, TruePad[]>();
  for (const { side, pads } of layers) {
    for (const { refdes, pin, at, box } of pads) {
      if (refdes === null || pin === null || side === null) continue;
      const known = list.get(refdes) ?? [];
      known.push({ pin, side, at, box });
      list.set(refdes, known);
    }
  }
  return list;
}

/** Paste shows parts best; else mask or copper. */
function bareOf(layers: readonly Layer[]): Record<Side, At[]> {
  const pasted = layers.filter(({ name, pads }) => PASTE.test(name) && pads.length > 0);
  const from = pasted.length > 0 ? pasted : layers.filter(({ side }) => side !== null);
  const on = (side: Side): At[] =>
    from.filter((layer) => layer.side === side).flatMap(({ pads }) => pads.map(({ at }) => at));
  return { top: on('top'), bottom: on('bottom') };
}
