import type { Disc } from '../plane.ts';
import { type MacroBody, macroShape } from './macro.ts';
import { circleDiscs, obroundDiscs, rectangleDiscs, regularPolygonDiscs } from './shapes.ts';
import type { GerberObject } from './types.ts';

/** A tool of the aperture dictionary: a shape about its origin (mm), or a block of objects (`AB`). */
export type Aperture =
  | { readonly kind: 'shape'; readonly discs: readonly Disc[]; readonly widthMm: number; readonly function?: string }
  | { readonly kind: 'block'; readonly objects: readonly GerberObject[] };

export interface ApertureDefinition {
  readonly code: number;
  readonly template: string;
  readonly parameters: readonly number[];
}

/** Reads `ADD10C,0.5X0.2` (Gerber format specification, section 4.3); null when it is no definition. */
export function parseDefinition(block: string): ApertureDefinition | null {
  const match = /^ADD0*(\d+)([A-Za-z_.$][^,]*)(?:,(.*))?$/s.exec(block);
  if (!match) return null;
  const parameters = (match[3] ?? '').split(/[Xx]/).filter((field) => field.trim() !== '');
  return { code: Number(match[1]), template: match[2].trim(), parameters: parameters.map(Number) };
}

/**
 * The aperture's shape in mm. Holes do not change extents and are left out.
 * Returns null for an unknown template or a macro that cannot be read.
 */
export function buildAperture(
  definition: ApertureDefinition,
  macros: ReadonlyMap<string, MacroBody>,
  mmPerUnit: number,
): { discs: Disc[]; widthMm: number } | null {
  const { parameters } = definition;
  if (parameters.some((value) => !Number.isFinite(value))) return null;
  const discs = templateDiscs(definition, macros);
  if (discs === null) return null;
  const width =
    definition.template === 'R' || definition.template === 'O'
      ? Math.min(parameters[0], parameters[1] ?? parameters[0])
      : (parameters[0] ?? 0);
  return {
    discs: discs.map(({ x, y, r }) => ({ x: x * mmPerUnit, y: y * mmPerUnit, r: r * mmPerUnit })),
    widthMm: macros.has(definition.template) ? 0 : width * mmPerUnit,
  };
}

function templateDiscs(
  { template, parameters }: ApertureDefinition,
  macros: ReadonlyMap<string, MacroBody>,
): Disc[] | null {
  const [first, second, third] = parameters;
  const macro = macros.get(template);
  if (macro) return macroShape(macro, parameters);
  if (first === undefined) return null;
  switch (template) {
    case 'C':
      return circleDiscs(first);
    case 'R':
      return rectangleDiscs(first, second ?? first);
    case 'O':
      return obroundDiscs(first, second ?? first);
    case 'P':
      return second >= 3 && second <= 1000 ? regularPolygonDiscs(first, second, third ?? 0) : null;
    default:
      return null;
  }
}
