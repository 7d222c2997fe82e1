import type { PadCheck } from '../../../../shared-types/import-report.ts';
import type { LayerRole, Recognised } from '../files/recognise.ts';
import { findLoops } from '../outline/chain.ts';
import type { OutlineSource } from '../outline/choose.ts';
import { type Loop, makeLoop } from '../outline/loop.ts';
import { collectPads, type Pad } from '../pads/collect.ts';
import { type PlainPad, plainPads } from '../pads/plain-pads.ts';
import { pairMidpoints } from '../register/midpoints.ts';
import type { Anchors } from '../register/register.ts';
import { countLayers } from './laminate.ts';
import { type NetlistPads, netlistPads } from './netlist-pads.ts';

type Layer = Extract<Recognised, { kind: 'layer' }>;

export interface Layers extends Anchors {
  readonly outlines: readonly OutlineSource[];
  /** Which layers the pads with references come from; null when none carries references. */
  readonly padLayer: PadCheck['layer'] | null;
  /** Pads of layers without references, where no layer has any. */
  readonly unnamed: { readonly top: readonly PlainPad[]; readonly bottom: readonly PlainPad[] };
  readonly copperLayers: number | null;
  /** The netlist whose pads stand in for those of layers without references. */
  readonly netlist: NetlistPads | null;
  /** Names of the layers the board is made from. */
  readonly used: ReadonlySet<string>;
}

/** Everything the board needs from the Gerber layers. */
export function gatherLayers(files: readonly Recognised[]): Layers {
  const layers = files.filter((file) => file.kind === 'layer');
  const ofRole = (...roles: LayerRole[]) => layers.filter(({ role }) => roles.includes(role));
  const named = namedPads(ofRole);
  const drawn = outlineSources(ofRole);
  const plain = named.pads.size > 0 ? [] : plainLayers(ofRole);
  const padsOn = (side: 'top' | 'bottom'): PlainPad[] =>
    plain.filter(({ role }) => role.endsWith(side)).flatMap(({ image }) => plainPads(image.objects));
  const bare = { top: padsOn('top'), bottom: padsOn('bottom') };
  const netlist = named.pads.size > 0 ? null : netlistPads(files, bare, drawn);
  const edge =
    netlist && netlist.loops.length > 0 ? [{ file: netlist.file, declared: true, loops: netlist.loops }] : [];
  const outlines = drawn.length > 0 ? drawn : edge;
  const unnamed = netlist ? { top: [], bottom: [] } : bare;
  return {
    pads: netlist?.pads ?? named.pads,
    padLayer: netlist ? 'netlist' : named.layer,
    netlist,
    midpoints: { top: pairMidpoints(unnamed.top), bottom: pairMidpoints(unnamed.bottom) },
    unnamed,
    outlines,
    copperLayers: countLayers(layers.map(({ image }) => image.fileFunction)),
    used: new Set([
      ...outlines.map(({ file }) => file),
      ...named.files,
      ...plain.map(({ name }) => name),
      ...(netlist ? [netlist.file] : []),
    ]),
  };
}

type OfRole = (...roles: LayerRole[]) => Layer[];
const PAD_LAYERS = ['copper', 'mask', 'paste'] as const;

/** Pads with references: copper has them whole; mask or paste openings serve where it has none. */
function namedPads(ofRole: OfRole): { pads: Map<string, Pad[]>; layer: PadCheck['layer'] | null; files: string[] } {
  for (const layer of PAD_LAYERS) {
    const pads = new Map<string, Pad[]>();
    const found = [...ofRole(`${layer}-top`), ...ofRole(`${layer}-bottom`)];
    for (const { role, image } of found) collectPads(image, role.endsWith('top') ? 'top' : 'bottom', pads);
    if (pads.size > 0) return { pads, layer, files: found.map(({ name }) => name) };
  }
  return { pads: new Map(), layer: null, files: [] };
}

/** Layers whose pads serve as anchors without references; paste shows parts best. */
function plainLayers(ofRole: OfRole): Layer[] {
  for (const layer of ['paste', 'mask', 'copper'] as const) {
    const found = [...ofRole(`${layer}-top`), ...ofRole(`${layer}-bottom`)].filter(
      ({ image }) => image.objects.length > 0,
    );
    if (found.length > 0) return found;
  }
  return [];
}

/** Layers that may show the outline: profiles; if they show no loop, mechanical layers. */
function outlineSources(ofRole: OfRole): OutlineSource[] {
  const profiles = ofRole('profile')
    .map(outlineSource)
    .filter(({ loops }) => loops.length > 0);
  if (profiles.some(({ declared }) => declared)) return profiles;
  return [
    ...profiles,
    ...ofRole('mechanical')
      .map(outlineSource)
      .filter(({ loops }) => loops.length > 0),
  ];
}

function outlineSource({ name, by, role, image }: Layer): OutlineSource {
  const strokes = image.objects.flatMap((object) => (object.kind === 'stroke' && object.dark ? [object] : []));
  const loops = findLoops(strokes, name);
  const declared = by === 'function' && role === 'profile';
  return { file: name, declared, loops: loops.length > 0 ? loops : regionLoops(image.objects, name) };
}

/** Some profiles are drawn as filled areas: then their borders are the loops. */
function regionLoops(objects: Layer['image']['objects'], file: string): Loop[] {
  return objects.flatMap((object) =>
    object.kind === 'region' && object.dark ? object.contours.map((contour) => makeLoop(contour, file, 0, 0)) : [],
  );
}
