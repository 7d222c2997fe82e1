import { z } from 'zod';
import { BOARD_FORMAT, BOARD_VERSION } from './format-version.ts';
import {
  contourSchema,
  type Point,
  pointSchema,
  type Side,
  sideSchema,
  type TurnedRectangle,
  turnVector,
} from './geometry.ts';
import { ownPackagesSchema } from './own-package.ts';
import { boardPhotosSchema } from './photo.ts';
import { strapGroupSchema } from './straps.ts';

const refdes = z.string().min(1).max(64).describe('Reference designator, unique on the board.');
const positiveMm = z.number().positive().max(2000);

/** One copper layer. Cover counts continuous copper only: the default is 20 % for signal layers and 80 % for planes. */
export const copperLayerSchema = z.strictObject({
  kind: z.enum(['signal', 'plane']),
  copperUm: z.number().min(0).max(1000).describe('Copper thickness, micrometres.'),
  coverPercent: z.number().min(0).max(100).optional(),
});

export const laminateSchema = z.strictObject({
  thicknessMm: z.number().min(0.05).max(20),
  layers: z.array(copperLayerSchema).max(64).describe('Copper layers from the top down.'),
  layersKnown: z.boolean().describe('False when the layer count or the pours are a guess: bands are then wider.'),
});
export type Laminate = z.infer<typeof laminateSchema>;

/** Body of a part. Length along its own x axis, width along its own y axis, before turning. */
export const packageSchema = z.strictObject({
  name: z.string().max(200),
  shape: z.enum(['rectangle', 'round']),
  lengthMm: positiveMm,
  widthMm: positiveMm,
  heightMm: z
    .number()
    .positive()
    .max(200)
    .nullable()
    .describe('Body height above the board; null: not known, the class gives one.'),
});

/** Limits of the part's own data sheet; they win over the class. */
export const ownLimitsSchema = z.strictObject({
  bodyC: z.number().min(20).max(600).optional(),
  skinC: z.number().min(20).max(600).optional(),
  jointC: z.number().min(20).max(600).optional(),
  source: z.string().min(1).max(500),
});

export const partSchema = z.strictObject({
  refdes,
  side: sideSchema,
  x: z.number().describe('Body centre, mm.'),
  y: z.number().describe('Body centre, mm.'),
  turn: z
    .number()
    .describe(
      'Degrees counter-clockwise seen from the top, on both sides. On the bottom the part is first mirrored (own y to -y), then turned.',
    ),
  package: packageSchema,
  class: z.string().min(1).max(64).describe('Id of a part class in the library.'),
  classGuessed: z.boolean().describe('True while nobody confirmed the class.'),
  value: z.string().max(200),
  fitted: z.boolean().describe('False for an empty position.'),
  limits: ownLimitsSchema.optional(),
  alloy: z.string().max(64).describe("Id of a solder alloy in the library, or 'unknown'."),
  edgeBonded: z.boolean(),
  underfilled: z.boolean(),
  coated: z.boolean(),
  massG: z.number().positive().max(10000).optional(),
  padAreaMm2: z.number().positive().optional().describe('Total mating area of the pads, for the drop-off rule.'),
  pinCount: z.int().positive().max(10000).optional(),
  pin1: pointSchema
    .optional()
    .describe("Pin 1 in the part's own axes (before mirroring and turning), mm from the body centre."),
});
export type Part = z.infer<typeof partSchema>;

export const fiducialSchema = z.strictObject({
  id: z.string().min(1).max(64),
  side: sideSchema,
  x: z.number(),
  y: z.number(),
});

/** A metal body over or under parts: a shield can, a can's frame, a stiffener. It has one temperature. */
export const coverSchema = z.strictObject({
  id: z.string().min(1).max(64),
  kind: z.enum(['can', 'frame', 'stiffener']),
  side: sideSchema,
  x: z.number(),
  y: z.number(),
  lengthMm: positiveMm,
  widthMm: positiveMm,
  turn: z.number(),
  heightMm: z.number().positive().max(100).describe('Outer height above the board, mm; a stiffener: its thickness.'),
  sheetMm: z.number().positive().max(20).describe('Sheet thickness, mm.'),
  material: z.enum(['nickel-silver', 'tinned-steel', 'aluminium', 'stainless-steel', 'copper']),
  fixing: z.enum(['soldered', 'clipped', 'screwed', 'bonded']),
});
export type Cover = z.infer<typeof coverSchema>;

export const boardSourceSchema = z.strictObject({
  drawnFrom: z.string().max(500).describe('Where the drawing comes from: files, photo, measured by hand.'),
  licence: z.string().max(200),
  invented: z.boolean().describe('True for demonstration boards that exist nowhere.'),
});

const formatFields = { format: z.literal(BOARD_FORMAT), version: z.literal(BOARD_VERSION) };

/** A board as drawn or imported: mm, x right, y up, seen from the top. Nothing in it is derived. */
export const boardSchema = z
  .strictObject({
    ...formatFields,
    name: z.string().min(1).max(200),
    revision: z.string().max(100),
    outline: contourSchema,
    cutouts: z.array(contourSchema).max(5000),
    laminate: laminateSchema,
    parts: z.array(partSchema).max(20000),
    fiducials: z.array(fiducialSchema).max(1000),
    covers: z.array(coverSchema).max(1000),
    photos: boardPhotosSchema,
    straps: z.array(strapGroupSchema).max(100),
    packages: ownPackagesSchema,
    source: boardSourceSchema,
  })
  .meta({
    title: 'Heatmargin board',
    description: 'A populated board: outline, parts on both sides, laminate. Lengths in mm.',
  });
export type Board = z.infer<typeof boardSchema>;

/** The part's body as a turned rectangle (a round body: its enclosing square). */
export function bodyOf(part: Part): TurnedRectangle {
  return { x: part.x, y: part.y, lengthMm: part.package.lengthMm, widthMm: part.package.widthMm, turnDeg: part.turn };
}

/** A point in a part's own axes, on the board. */
export function ownToBoard(part: { x: number; y: number; turn: number; side: Side }, own: Point): Point {
  const turned = turnVector(own.x, part.side === 'bottom' ? -own.y : own.y, part.turn);
  return { x: part.x + turned.x, y: part.y + turned.y };
}

/** An empty rectangular board to draw on; four copper layers guessed. */
export function emptyBoard(name: string, lengthMm: number, widthMm: number): Board {
  return {
    format: BOARD_FORMAT,
    version: BOARD_VERSION,
    name,
    revision: '',
    outline: [
      { x: 0, y: 0 },
      { x: lengthMm, y: 0 },
      { x: lengthMm, y: widthMm },
      { x: 0, y: widthMm },
    ],
    cutouts: [],
    laminate: defaultLaminate(),
    parts: [],
    fiducials: [],
    covers: [],
    photos: [],
    straps: [],
    packages: [],
    source: { drawnFrom: 'drawn by hand', licence: '', invented: false },
  };
}

/** Four layers of 35 um on 1.6 mm, signal outside and planes inside: a guess until somebody counts the layers. */
export function defaultLaminate(): Laminate {
  const layer = (kind: 'signal' | 'plane') => ({ kind, copperUm: 35 });
  return {
    thicknessMm: 1.6,
    layers: [layer('signal'), layer('plane'), layer('plane'), layer('signal')],
    layersKnown: false,
  };
}
