import type { Contour, Corner, Point } from '../../../shared-types/geometry.ts';
import { type LengthUnit, MM_PER_MIL } from '../../../shared-types/units.ts';
import { angleOf } from '../../editing/contour/corners.ts';
import {
  bulgeOfRadius,
  bulgeOfSweep,
  bulgeThrough,
  circleContour,
  rectangleContour,
  slotContour,
} from '../../editing/contour/shapes.ts';
import type { DraftField, OutlineState } from './outline-state.ts';

/** The shape under way: its fields, what pencil and typed figures make of it. */

/** Fields of the step at hand, in the order of Tab. */
export function fieldsOf({ mode, draft }: OutlineState): readonly DraftField[] {
  if (mode === 'hole') return ['x', 'y', 'diameter'];
  if (draft.points.length === 0) return ['x', 'y'];
  if (mode === 'polygon') return draft.arcEnd ? ['radius', 'sweep'] : ['length', 'angle'];
  if (mode === 'rectangle') return ['width', 'height', 'radius'];
  return mode === 'circle' ? ['radius', 'diameter'] : ['length', 'angle', 'width'];
}

const isAngle = (field: DraftField): boolean => field === 'angle' || field === 'sweep';

/** What stands in a field as it was typed, mm or degrees; null: nothing typed, or no figure. */
export function typedValue(state: OutlineState, field: DraftField, unit: LengthUnit): number | null {
  const text = state.draft.typed[field]?.replace(',', '.');
  if (!text || !fieldsOf(state).includes(field)) return null;
  const value = Number(text);
  if (!Number.isFinite(value)) return null;
  return unit === 'mil' && !isAngle(field) ? value * MM_PER_MIL : value;
}

/** The figure of a field as it stands now, in the user's unit; null: not known yet. */
export function fieldValue(state: OutlineState, field: DraftField, unit: LengthUnit): number | null {
  const value = figureOf(state, field, unit);
  return value !== null && unit === 'mil' && !isAngle(field) ? value / MM_PER_MIL : value;
}

function figureOf(state: OutlineState, field: DraftField, unit: LengthUnit): number | null {
  const typed = typedValue(state, field, unit);
  if (typed !== null) return typed;
  const { draft, mode } = state;
  const at = pencilOf(state, unit);
  const from = draft.points.at(-1);
  if (field === 'diameter' && mode === 'hole') return state.holeMm;
  if (field === 'radius' && mode === 'rectangle') return state.cornerMm;
  if (field === 'width' && mode === 'slot') return state.slotMm;
  if (!at) return null;
  if (field === 'x' || field === 'y') return at[field];
  if (!from) return null;
  const length = Math.hypot(at.x - from.x, at.y - from.y);
  if (draft.arcEnd) return arcFigure(draft.arcEnd, from, bulgeOf(state, unit), field);
  const figures: Partial<Record<DraftField, number>> = {
    length,
    angle: length > 0 ? angleOf(from, at) : 0,
    width: Math.abs(at.x - from.x),
    height: Math.abs(at.y - from.y),
    radius: length,
    diameter: 2 * length,
  };
  return figures[field] ?? null;
}

function arcFigure(end: Point, from: Point, bulge: number, field: DraftField): number | null {
  const sweep = (4 * Math.atan(bulge) * 180) / Math.PI;
  if (field === 'sweep') return sweep;
  const half = Math.hypot(end.x - from.x, end.y - from.y) / 2;
  return bulge === 0 ? null : half / Math.abs(Math.sin((sweep * Math.PI) / 360));
}

/** Where the next point goes: the pencil, held to what was typed; null: not known yet. */
export function pencilOf(state: OutlineState, unit: LengthUnit): Point | null {
  const { draft, mode } = state;
  const typed = (field: DraftField) => typedValue(state, field, unit);
  const from = draft.points.at(-1);
  if (!from || mode === 'hole') {
    const x = typed('x') ?? draft.pencil?.x;
    const y = typed('y') ?? draft.pencil?.y;
    return x === undefined || y === undefined ? null : { x, y };
  }
  const way = draft.pencil ? { x: draft.pencil.x - from.x, y: draft.pencil.y - from.y } : null;
  if (mode === 'rectangle') {
    const side = (typedMm: number | null, drawn: number | undefined) =>
      typedMm === null ? drawn : Math.abs(typedMm) * (typedMm < 0 || (drawn ?? 0) < 0 ? -1 : 1);
    const width = side(typed('width'), way?.x);
    const height = side(typed('height'), way?.y);
    return width === undefined || height === undefined ? null : { x: from.x + width, y: from.y + height };
  }
  const diameter = typed('diameter');
  const length = mode === 'circle' ? (typed('radius') ?? (diameter === null ? null : diameter / 2)) : typed('length');
  const angle = typed('angle');
  const drawnLength = way && Math.hypot(way.x, way.y);
  const long = length ?? drawnLength;
  if (long === null) return null;
  if (angle === null && length === null) return draft.pencil;
  const radians = angle === null ? Math.atan2(way?.y ?? 0, way?.x ?? 1) : (angle * Math.PI) / 180;
  return { x: tidy(from.x + long * Math.cos(radians)), y: tidy(from.y + long * Math.sin(radians)) };
}

/** No dust of sines and cosines: a typed 90 degrees is upright. */
const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 || 0;

/** Bend of the arc being chosen: typed radius or sweep, else through the pencil. */
export function bulgeOf(state: OutlineState, unit: LengthUnit): number {
  const { draft } = state;
  const from = draft.points.at(-1);
  if (!from || !draft.arcEnd) return 0;
  const through = draft.pencil ? bulgeThrough(from, draft.arcEnd, draft.pencil) : 1;
  const sweep = typedValue(state, 'sweep', unit);
  if (sweep !== null && Math.abs(sweep) < 360) return bulgeOfSweep(sweep);
  const radius = typedValue(state, 'radius', unit);
  if (radius === null || radius === 0) return through;
  const chord = Math.hypot(draft.arcEnd.x - from.x, draft.arcEnd.y - from.y);
  return bulgeOfRadius(chord, Math.abs(radius), radius < 0 ? -1 : Math.sign(through)) ?? through;
}

/** The whole shape as it would be if it ended at the pencil; null: not enough of it. Open: corners in their order. */
export function shapeOf(state: OutlineState, unit: LengthUnit): { contour: Contour; closed: boolean } | null {
  const { draft, mode } = state;
  const at = pencilOf(state, unit);
  if (mode === 'hole') {
    const size = typedValue(state, 'diameter', unit) ?? state.holeMm;
    return at && size > 0 ? { contour: circleContour(at, size / 2), closed: true } : null;
  }
  const from = draft.points.at(-1);
  if (!from) return null;
  if (mode === 'polygon') return { contour: chainOf(state, at, unit), closed: false };
  if (!at) return null;
  const far = Math.hypot(at.x - from.x, at.y - from.y);
  if (mode === 'rectangle') {
    if (at.x === from.x || at.y === from.y) return null;
    return {
      contour: rectangleContour(from, at, typedValue(state, 'radius', unit) ?? state.cornerMm),
      closed: true,
    };
  }
  if (mode === 'circle') return far > 0 ? { contour: circleContour(from, far), closed: true } : null;
  const width = typedValue(state, 'width', unit) ?? state.slotMm;
  return far > 0 && width > 0 ? { contour: slotContour(from, at, width), closed: true } : null;
}

/** Corners of a polygon with the edge to the pencil. */
function chainOf(state: OutlineState, at: Point | null, unit: LengthUnit): Contour {
  const { points, arcEnd } = state.draft;
  const last = points[points.length - 1];
  const bent: Corner[] = [...points.slice(0, -1), arcEnd ? { ...last, bulge: bulgeOf(state, unit) } : last];
  const end = arcEnd ?? at;
  return end ? [...bent, { x: end.x, y: end.y }] : bent;
}
