import type { ContourFault, ContourId } from '../../rules/contour-faults.ts';
import { type LengthUnit, MM_PER_MIL } from '../../units.ts';
import { rounded } from '../measures.ts';

/** Words of drawing and changing the outline. */

/** A contour as it is called in lists and sentences. */
export const contourName = (id: ContourId): string => (id === 'outline' ? 'Outline' : `Cutout ${id + 1}`);

const inSentence = (id: ContourId): string => (id === 'outline' ? 'the outline' : `cutout ${id + 1}`);

const figure = (mm: number, unit: LengthUnit): string =>
  unit === 'mil' ? rounded(mm / MM_PER_MIL, 1) : rounded(mm, 2);

const place = (at: { x: number; y: number }, unit: LengthUnit): string =>
  `x ${figure(at.x, unit)}, y ${figure(at.y, unit)} ${unit}`;

/** Why a shape is refused, and where. */
export function contourFaultSentence(fault: ContourFault, unit: LengthUnit): string {
  const at = place(fault.at, unit);
  switch (fault.kind) {
    case 'self': {
      const edges = fault.edges.map((index) => index + 1);
      const verb = fault.crosses ? 'cross' : 'touch';
      return `Refused: edges ${edges[0]} and ${edges[1]} of ${inSentence(fault.id)} ${verb} at ${at}.`;
    }
    case 'pair':
      return `Refused: ${inSentence(fault.id)} ${fault.crosses ? 'crosses' : 'touches'} ${inSentence(fault.other)} at ${at}.`;
    case 'outside':
      return `Refused: ${inSentence(fault.id)} would lie outside the outline, at ${at}.`;
    case 'nested':
      return `Refused: ${inSentence(fault.id)} and ${inSentence(fault.other)} would lie in one another, at ${at}.`;
    case 'empty':
      return `Refused: ${inSentence(fault.id)} would enclose nothing, at ${at}.`;
  }
}

export const frameOfBoardWords = {
  title: 'Place and turn',
  text: 'Parts, covers, fiducials, sites, thermocouples and the matching points of photos go along.',
  at: (x: string, y: string) => `Lower left corner at ${x}, ${y}`,
  x: 'Corner x',
  y: 'Corner y',
  toOrigin: 'Lower left to 0, 0',
  turnLeft: 'Turn left 90°',
  turnRight: 'Turn right 90°',
  mirror: 'Mirror left to right',
  edits: {
    origin: 'move the origin',
    turn: 'turn the board',
    mirror: 'mirror the board',
  },
} as const;

/** Names of undo steps. */
export const outlineEdits = {
  outline: 'draw the outline',
  cutout: 'draw a cutout',
  bay: 'cut a bay into the outline',
  move: (part: 'whole' | 'corner' | 'edge' | 'bend', name: string): string =>
    part === 'whole'
      ? `move ${name.toLowerCase()}`
      : `move ${part === 'edge' ? 'an' : 'a'} ${part} of ${name.toLowerCase()}`,
  bend: 'bend an edge',
  insert: 'insert a corner',
  deleteCorner: 'delete a corner',
  removeCutout: 'delete a cutout',
  copyCutout: 'duplicate a cutout',
  round: 'round corners',
  figures: 'set a measure of the outline',
} as const;

type DraftField = 'x' | 'y' | 'length' | 'angle' | 'radius' | 'sweep' | 'width' | 'height' | 'diameter';

const fieldNames: Record<DraftField, string> = {
  x: 'x',
  y: 'y',
  length: 'Length',
  angle: 'Angle',
  radius: 'Radius',
  sweep: 'Sweep',
  width: 'Width',
  height: 'Height',
  diameter: 'Diameter',
};

const fieldUnit = (field: DraftField, unit: LengthUnit): string =>
  field === 'angle' || field === 'sweep' ? '°' : ` ${unit}`;

/** Keys that count only while the outline is drawn or changed: what, and the key. */
export const outlineKeys = {
  title: 'While drawing the outline',
  lines: [
    ['Next figure, the one before', 'Tab, Shift+Tab'],
    ['Set the point; with nothing typed: close the shape', 'Enter'],
    ['Cut a bay into the outline with a cutout over its edge', 'Shift+Enter, Shift+click'],
    ['Bend the next edge, or the chosen one', 'A'],
    ['Take the last point back', 'Backspace, Ctrl+Z'],
    ['Put a corner into the chosen edge', 'Insert'],
    ['Delete the chosen corner or cutout', 'Delete'],
    ['Copy the chosen cutout', 'Ctrl+D'],
    ['Move what is chosen by a step, by ten', 'Arrows, Shift+arrows'],
  ],
} as const;

export const outlineWords = {
  title: 'Draw and change',
  tool: 'Draw the outline',
  start: 'Draw or change the outline',
  mode: 'What to draw',
  modes: {
    change: 'Change',
    polygon: 'Polygon',
    rectangle: 'Rectangle',
    circle: 'Circle',
    slot: 'Slot',
    hole: 'Hole',
  },
  target: 'Becomes',
  targets: { outline: 'Outline', cutout: 'Cutout' },
  snapping: 'Snap to corners, edges, centres, angles, grid',
  grid: 'Grid step',
  arc: 'Next edge is an arc',
  arcKey: 'A',
  set: 'Set the point',
  close: 'Close the shape',
  back: 'Take back a point',
  drop: 'Drop the shape',
  hints: {
    change:
      'Drag corners, edges and the rings that bend them. Ctrl-drag on an edge puts a corner there, Insert does for a chosen edge; Del deletes, Ctrl+D copies a cutout.',
    draw: 'Click, or type figures: Tab goes to the next, Enter sets the point. Backspace takes one back, Esc drops the shape, Alt lifts the snapping. With Shift a cutout over the edge cuts a bay into the outline.',
    polygon: 'Enter without figures closes the shape. A makes the next edge an arc: first its end, then a point on it.',
  },
  fields: fieldNames,
  fieldLine: (field: DraftField, typed: string | null, value: number | null, unit: LengthUnit): string => {
    const shown = typed !== null ? `${typed}_` : value === null ? '-' : rounded(value, unit === 'mil' ? 0 : 2);
    return `${fieldNames[field]} ${shown}${fieldUnit(field, unit)}`;
  },
  fieldUnit: (field: DraftField, unit: LengthUnit): string => fieldUnit(field, unit).trim(),
  edgeMeasure: (lengthMm: number, radiusMm: number, unit: LengthUnit): string =>
    radiusMm === 0 ? figure(lengthMm, unit) : `R ${figure(Math.abs(radiusMm), unit)}`,
  snaps: {
    corner: 'corner',
    middle: 'middle',
    centre: 'centre',
    edge: 'on edge',
    angle: 'angle',
    level: 'level',
  },
  contours: 'Shapes',
  size: (width: string, height: string) => `${width} × ${height}`,
  choose: (name: string) => `Choose ${name.toLowerCase()}`,
  duplicate: 'Duplicate',
  remove: 'Delete',
  noRoom: 'No room for a copy beside it.',
  corners: (name: string) => `Corners of ${name.toLowerCase()}`,
  corner: (number: number) => `Corner ${number}`,
  edge: (number: number) => `Edge ${number}`,
  columns: { number: '#', x: 'x', y: 'y', length: 'Length', angle: 'Angle', radius: 'Radius' },
  columnsText:
    'Length, angle and radius are those of the edge that leaves the corner; radius 0 is straight, negative bends inwards.',
  roundBy: 'Round corners by',
  roundAll: 'Round all',
  roundOne: 'Round the corner',
  insert: 'Insert a corner',
  earlier: 'Earlier corners',
  later: 'Later corners',
  deleteCorner: 'Delete the corner',
  tooLarge: (largest: string) => `Refused: at most ${largest} fits there.`,
  tooSmall: (least: string) => `Refused: an arc over that edge needs at least ${least}.`,
  tooFew: 'Refused: a shape needs three corners.',
} as const;
