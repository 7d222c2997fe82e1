import type { Contour, Corner, Point } from '../../../shared-types/geometry.ts';
import type { ContourFault, ContourId } from '../../../shared-types/rules/contour-faults.ts';

/** `change`: corners and edges are dragged; the others draw. */
export const OUTLINE_MODES = ['change', 'polygon', 'rectangle', 'circle', 'slot', 'hole'] as const;
export type OutlineMode = (typeof OUTLINE_MODES)[number];

/** What the pencil has snapped to. */
export type SnapKind = 'free' | 'grid' | 'corner' | 'middle' | 'centre' | 'edge' | 'angle' | 'level';

/** Figures that can be typed while drawing. Lengths in the user's unit, angles in degrees. */
export type DraftField = 'x' | 'y' | 'length' | 'angle' | 'radius' | 'sweep' | 'width' | 'height' | 'diameter';

/** A shape on its way. */
export type Draft = {
  /** Corners set so far; of a rectangle, a circle, a slot the first point. A bulge belongs to the edge that leaves. */
  points: readonly Corner[];
  /** The next edge of a polygon is an arc. */
  arc: boolean;
  /** End of an arc whose bend is being chosen. */
  arcEnd: Point | null;
  /** Where the pencil stands, mm; null: not over the canvas yet. */
  pencil: Point | null;
  snap: SnapKind;
  typed: Readonly<Partial<Record<DraftField, string>>>;
  /** Place of the field being typed into. */
  field: number;
};

/** What is chosen of the shapes: a contour, one of its corners or edges. */
export type ContourPick = { id: ContourId; part: 'whole' | 'corner' | 'edge'; index: number };

/** Drawing and changing outline and cutouts: how the tool is set, and what is under way. No part of the document. */
export type OutlineState = {
  mode: OutlineMode;
  /** What polygons, rectangles and circles become. Slots and holes are always cutouts. */
  target: 'outline' | 'cutout';
  snapping: boolean;
  gridMm: number;
  holeMm: number;
  slotMm: number;
  /** Radius that rectangles' corners are drawn with. */
  cornerMm: number;
  draft: Draft;
  picked: ContourPick | null;
  /** Why the last shape was refused, and the shape while it is still held. */
  refused: ContourFault | null;
  wanted: Contour | null;
};

export const emptyDraft: Draft = {
  points: [],
  arc: false,
  arcEnd: null,
  pencil: null,
  snap: 'free',
  typed: {},
  field: 0,
};

export const startingOutline: OutlineState = {
  mode: 'change',
  target: 'outline',
  snapping: true,
  gridMm: 0.5,
  holeMm: 3.2,
  slotMm: 2,
  cornerMm: 0,
  draft: emptyDraft,
  picked: null,
  refused: null,
  wanted: null,
};

/** A draft that would be lost by leaving it. */
export const begun = ({ points, typed }: Draft): boolean => points.length > 0 || Object.keys(typed).length > 0;

/** The draft after its point was set: nothing typed, the pencil where it was. */
export const restarted = (draft: Draft): Draft => ({ ...emptyDraft, pencil: draft.pencil, snap: draft.snap });
