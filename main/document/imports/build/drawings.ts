import type { DrawingUnit } from '../../../../shared-types/words/drawings.ts';
import { boundingPoints } from '../drawing/shapes.ts';
import { strokesOf } from '../drawing/strokes.ts';
import type { Drawing, DrawnShape } from '../drawing/types.ts';
import type { Recognised } from '../files/recognise.ts';
import { findLoops } from '../outline/chain.ts';
import type { OutlineSource } from '../outline/choose.ts';
import type { Loop } from '../outline/loop.ts';
import type { LengthWord } from '../placements/columns.ts';
import { type Box, boxHeight, boxOfPoints, boxWidth, type Point } from '../plane.ts';
import type { Layers } from './layers.ts';

/** What a drawing gave, and how its unit was told. */
export interface DrawnOutline {
  readonly file: string;
  readonly drawing: Drawing;
  readonly unit: DrawingUnit;
  readonly mmPerUnit: number;
  readonly unitBy: 'said' | 'parts' | 'size' | 'usual' | 'chosen';
  /** A unit that the file says and that cannot be. */
  readonly refused: string | null;
  /** Layer that was taken for the outline by its name; null when all were looked at alike. */
  readonly layer: string | null;
  readonly loops: number;
}

interface Unit {
  readonly word: DrawingUnit;
  readonly mm: number;
}

const UNITS: Readonly<Record<LengthWord | 'px', Unit>> = {
  mm: { word: 'mm', mm: 1 },
  mil: { word: 'mil', mm: 0.0254 },
  inch: { word: 'inch', mm: 25.4 },
  um: { word: 'um', mm: 0.001 },
  cm: { word: 'cm', mm: 10 },
  px: { word: 'px', mm: 25.4 / 96 },
};

/** Likeliest first. A number without unit in SVG is a pixel of 1/96 inch, though many programs mean mm. */
const CANDIDATES = {
  dxf: [UNITS.mm, UNITS.inch, UNITS.mil],
  svg: [UNITS.px, UNITS.mm, UNITS.inch, UNITS.mil],
} as const;

/** Boards that come to a bench. Common practice, no source. */
const [LEAST_MM, MOST_MM] = [10, 800];

/** Adds the loops of DXF and SVG drawings to the places where an outline may be found. */
export function addDrawings(
  files: readonly Recognised[],
  layers: Layers,
  placements: readonly Point[],
  unit: LengthWord | undefined,
): { layers: Layers; drawn: DrawnOutline[] } {
  const drawn: DrawnOutline[] = [];
  const sources: OutlineSource[] = [];
  for (const file of files) {
    if (file.kind !== 'drawing') continue;
    const found = outlineOf(file.name, file.drawing, placements, unit);
    sources.push(...found.sources);
    drawn.push(found.drawn);
  }
  if (drawn.length === 0) return { layers, drawn };
  const used = new Set([...layers.used, ...drawn.map(({ file }) => file)]);
  return { layers: { ...layers, outlines: [...layers.outlines, ...sources], used }, drawn };
}

function outlineOf(file: string, drawing: Drawing, placements: readonly Point[], chosen: LengthWord | undefined) {
  const told = tellUnit(file, drawing, placements, chosen);
  const sources = told.sources ?? sourcesOf(file, drawing.shapes, told.unit.mm);
  const drawn: DrawnOutline = {
    file,
    drawing,
    unit: told.unit.word,
    mmPerUnit: told.unit.mm,
    unitBy: told.by,
    refused: told.refused,
    layer: sources.find(({ declared }) => declared)?.layer ?? null,
    loops: sources.reduce((sum, { loops }) => sum + loops.length, 0),
  };
  return { sources, drawn };
}

interface ToldUnit {
  readonly unit: Unit;
  readonly by: DrawnOutline['unitBy'];
  readonly refused: string | null;
  /** Where loops had to be found to tell the unit. */
  readonly sources?: LayeredSource[];
}

/** The unit that was chosen, or said and likely; else the one in which a loop fits the parts; else the first that gives a likely size. */
function tellUnit(
  file: string,
  { format, shapes, mmPerUnit, unitSaid }: Drawing,
  placements: readonly Point[],
  chosen: LengthWord | undefined,
): ToldUnit {
  if (chosen) return { unit: UNITS[chosen], by: 'chosen', refused: null };
  const box = boxOfPoints(shapes.flatMap(({ shape }) => boundingPoints(shape)));
  const said = mmPerUnit === null ? null : { word: unitSaid, mm: mmPerUnit };
  if (said && isLikely(box, said.mm)) return { unit: said, by: 'said', refused: null };
  const refused = said && unitSaid;
  const byParts = unitByParts(file, shapes, CANDIDATES[format], placements);
  if (byParts) return { ...byParts, by: 'parts', refused };
  const likely = CANDIDATES[format].find(({ mm }) => isLikely(box, mm));
  if (likely) return { unit: likely, by: format === 'svg' && likely === UNITS.px ? 'usual' : 'size', refused };
  return { unit: said ?? CANDIDATES[format][0], by: said ? 'said' : 'size', refused: null };
}

function isLikely(box: Box, mm: number): boolean {
  const size = Math.max(boxWidth(box), boxHeight(box)) * mm;
  return size >= LEAST_MM && size <= MOST_MM;
}

const WIDEST_FIT = 3;

/** The unit in which a loop goes most closely round the parts. */
function unitByParts(
  file: string,
  shapes: readonly DrawnShape[],
  units: readonly Unit[],
  placements: readonly Point[],
): { unit: Unit; sources: LayeredSource[] } | null {
  if (placements.length < 3) return null;
  const parts = boxOfPoints(placements);
  let best: { unit: Unit; sources: LayeredSource[]; ratio: number } | null = null;
  for (const unit of units) {
    const sources = sourcesOf(file, shapes, unit.mm);
    for (const { box } of sources.flatMap(({ loops }) => loops)) {
      const [across, down] = [boxWidth(box) / boxWidth(parts), boxHeight(box) / boxHeight(parts)];
      if (!(across >= 0.95 && down >= 0.95 && across <= WIDEST_FIT && down <= WIDEST_FIT)) continue;
      if (best === null || across * down < best.ratio) best = { unit, sources, ratio: across * down };
    }
  }
  return best;
}

type LayeredSource = OutlineSource & { readonly layer?: string };

/** Names that people give the layer of the outline, and of what is cut out of it. Common practice, no source. */
const OUTLINE_NAME = /outline|profile|edge|contour|border|board|kontur|umriss/i;
const CUTOUT_NAME = /hole|drill|slot|cut-?out|mill|bohr/i;

/** Loops are looked for layer by layer; where no layer has one, in all together. A layer with a telling name goes first. */
function sourcesOf(file: string, shapes: readonly DrawnShape[], mmPerUnit: number): LayeredSource[] {
  const byLayer = new Map<string, DrawnShape[]>();
  for (const one of shapes) {
    const known = byLayer.get(one.layer);
    if (known) known.push(one);
    else byLayer.set(one.layer, [one]);
  }
  const loopsOf = (some: readonly DrawnShape[], name: string): Loop[] =>
    findLoops(strokesOf(some, mmPerUnit) ?? [], name);
  const named = [...byLayer].flatMap(([layer, own]): LayeredSource[] => {
    if (byLayer.size < 2 || !OUTLINE_NAME.test(layer)) return [];
    const name = `${file} [${layer}]`;
    const loops = loopsOf(own, name);
    return loops.length > 0 ? [{ file: name, declared: true, layer, loops }] : [];
  });
  if (named.length === 0) {
    const separate = [...byLayer.values()].flatMap((own) => loopsOf(own, file));
    const loops = separate.length > 0 || byLayer.size < 2 ? separate : loopsOf(shapes, file);
    return [{ file, declared: false, loops }];
  }
  const rest = [...byLayer].filter(([layer]) => !named.some((source) => source.layer === layer));
  const cut = rest.filter(([layer]) => CUTOUT_NAME.test(layer)).map(([, own]) => own);
  const withCutouts = named.map((source) => ({
    ...source,
    loops: [...source.loops, ...cut.flatMap((own) => loopsOf(own, source.file))],
  }));
  const others = rest.flatMap(([, own]) => loopsOf(own, file));
  return [...withCutouts, ...(others.length > 0 ? [{ file, declared: false, loops: others }] : [])];
}
