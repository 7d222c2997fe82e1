import { z } from 'zod';
import type { Board } from './board.ts';
import { PLAN_FORMAT, PLAN_VERSION } from './format-version.ts';
import { pointSchema, sideSchema } from './geometry.ts';
import { MOISTURE_LEVELS } from './library/moisture.ts';
import { segmentSchema } from './profile.ts';
import { stepWorkSchema } from './steps.ts';
import { siteExchangeSchema, strapWorkSchema } from './straps.ts';
import { tagSchema } from './tags.ts';
import { TERM_IDS } from './uncertainty.ts';

const id = z.string().min(1).max(64);
const celsius = z.number().min(-40).max(1200);

export const ticketDataSchema = z.strictObject({
  number: z.string().min(1).max(100),
  customer: z.string().max(200),
  unit: z.string().max(200).describe('Serial number or name of the unit on the bench.'),
  order: z.string().max(4000).describe('What was asked for.'),
  technician: z.string().max(200),
  date: z.string().max(40).describe('ISO 8601 date; empty: not set.'),
  notes: z.string().max(20000),
});

const standOff = { standOffMm: z.number().min(0).max(200).describe('Nozzle mouth to board, mm.') };
const held = {
  ...standOff,
  sweepRadiusMm: z.number().min(0).max(100).describe('Radius of the circle the nozzle is moved on; 0: held still.'),
  tiltDeg: z.number().min(0).max(80).describe('Lean from upright.'),
  headingDeg: z.number().describe('Direction in which the jet leans, degrees counter-clockwise from +x.'),
};

export const nozzleSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('round'), diameterMm: z.number().min(0.5).max(200), ...held }),
  z.strictObject({
    kind: z.literal('rectangular'),
    lengthMm: z.number().min(0.5).max(200),
    widthMm: z.number().min(0.5).max(200),
    turnDeg: z.number(),
    ...held,
  }),
  z.strictObject({
    kind: z.literal('hood'),
    lengthMm: z.number().min(0.5).max(200),
    widthMm: z.number().min(0.5).max(200),
    turnDeg: z.number(),
    filmAt30LMin: z.number().min(1).max(2000).describe('Film inside the rim at 30 L/min, W/m2K.'),
    rimGapMm: z.number().min(0.01).max(50),
    leak: z.number().min(0).max(1).describe('Share of the inside film that leaks past the rim.'),
    tiltDeg: held.tiltDeg,
    headingDeg: held.headingDeg,
    ...standOff,
  }),
  z.strictObject({
    kind: z.literal('infrared'),
    lengthMm: z.number().min(0.5).max(200).describe('Aperture of the emitter over the board, mm.'),
    widthMm: z.number().min(0.5).max(200),
    turnDeg: z.number(),
    emissivity: z.number().min(0.05).max(1).describe('Emissivity of the emitter.'),
    ...standOff,
  }),
]);
export type Nozzle = z.infer<typeof nozzleSchema>;

export const preheaterSchema = z.strictObject({
  kind: z.enum(['ceramic', 'quartz', 'halogen', 'hot-air']),
  lengthMm: z.number().min(1).max(2000).describe('Heated zone along x, mm.'),
  widthMm: z.number().min(1).max(2000).describe('Heated zone along y, mm.'),
  centre: pointSchema.nullable().describe('Centre of the zone, mm; null: centre of the outline.'),
  sensor: pointSchema.nullable().describe('Board sensor on the lower face; null: the source itself is commanded.'),
  largestC: celsius.describe('Highest source temperature, C.'),
  filmWm2K: z.number().min(1).max(500).optional().describe('Measured film in place of the value of the kind.'),
  lagS: z.number().min(0.1).max(3600).optional().describe('Measured lag in place of the value of the kind.'),
});
export type Preheater = z.infer<typeof preheaterSchema>;

/** What a logged run told of the model's terms; each in its own coordinate (logarithm of a factor, exponent, K). */
export const calibrationSchema = z.strictObject({
  board: z.string().max(200).describe('Name of the board it was made on: terms of the board hold on that one only.'),
  log: z.string().max(300).describe('Name of the log.'),
  readings: z.int().min(1),
  leftK: z.number().min(0).describe('What is left between log and fitted model, root mean square, K.'),
  terms: z
    .array(z.strictObject({ id: z.enum(TERM_IDS), step: z.number(), sigma: z.number().positive() }))
    .length(TERM_IDS.length),
  correlation: z.array(z.number().min(-1.001).max(1.001)).length(TERM_IDS.length ** 2),
});
export type Calibration = z.infer<typeof calibrationSchema>;

export const stationSchema = z.strictObject({
  name: z.string().max(200),
  nozzle: nozzleSchema,
  gasReads: z
    .enum(['setting', 'outlet'])
    .describe("Whether the profile's gas figures are dial settings or measured outlet temperatures."),
  preheater: preheaterSchema,
  roomC: celsius,
  entrainedC: celsius.describe('Temperature of the air that the jet draws in, C.'),
  fumeExtraction: z.enum(['off', 'low', 'high']),
  flowLevels: z
    .array(z.strictObject({ name: z.string().min(1).max(40), flowLMin: z.number().min(0).max(500) }))
    .max(12)
    .describe('What the dial of the gas says, and the flow at it; empty: flows are entered in L/min.'),
  outletReadings: z
    .array(z.strictObject({ settingC: celsius, outletC: celsius }))
    .max(8)
    .describe('Outlet measured by a bare thermocouple at some settings; empty: not measured.'),
  boardReadings: z
    .strictObject({
      sourceC: celsius.describe('Setting of the preheater while it was read, C.'),
      readings: z.array(z.strictObject({ atS: z.number().min(1).max(3600), boardC: celsius })).max(8),
    })
    .nullable()
    .describe('Board over the preheater after switch-on; its film and lag were fitted to it; null: not read.'),
  calibration: calibrationSchema.nullable().describe('Found from a logged run; null: the assumptions of the model.'),
});
export type Station = z.infer<typeof stationSchema>;

/** Moisture of the part that goes on: what its bag and its label say. */
export const incomingSchema = z.strictObject({
  moistureLevel: z.enum([...MOISTURE_LEVELS, 'unknown']).describe('Level of J-STD-020 on the label of the dry bag.'),
  openH: z
    .number()
    .min(0)
    .max(1e6)
    .nullable()
    .describe('Hours out of the dry bag until it is soldered; null: not known.'),
  thicknessMm: z
    .number()
    .positive()
    .max(50)
    .nullable()
    .describe('Body without balls or leads, mm; null: the height of the part that comes off is taken.'),
});
export type Incoming = z.infer<typeof incomingSchema>;

/** A place where a part is exchanged. The rework area is the nozzle's work: by default the target's body. */
export const siteSchema = z.strictObject({
  id,
  name: z.string().max(100),
  target: z.string().min(1).max(64).describe('Refdes of the part to exchange.'),
  side: sideSchema,
  area: z
    .strictObject({
      x: z.number(),
      y: z.number(),
      lengthMm: z.number().positive(),
      widthMm: z.number().positive(),
      turnDeg: z.number(),
    })
    .describe('Rework area: a turned rectangle, mm.'),
  alloyOff: z.string().max(64).describe("Alloy of the joints that come off, or 'unknown'."),
  alloyOn: z.string().max(64).describe("Alloy of the joints that go on, or 'unknown'."),
  exchangedBefore: z
    .int()
    .min(0)
    .max(20)
    .nullable()
    .describe('How often a part was exchanged at this place before; null: not known.'),
  incoming: incomingSchema,
  fence: z
    .strictObject({
      marginMm: z.number().min(0).max(100).describe('From the edge of the rework area to the fence, mm.'),
      rimGapMm: z.number().min(0.01).max(20).describe('Gap under the fence, mm.'),
    })
    .nullable()
    .describe('Foil stood round the site, between nozzle and neighbours; null: none.'),
});
export type Site = z.infer<typeof siteSchema>;

export const heatRunSchema = z.strictObject({
  id,
  name: z.string().min(1).max(100),
  kind: z.enum(['removal', 'site-preparation', 'installation', 'cover-removal']),
  side: sideSchema.describe('The side being worked: it faces the nozzle, the other one the preheater.'),
  siteIds: z.array(id).max(50),
  segments: z.array(segmentSchema).min(1).max(100),
});
export type HeatRun = z.infer<typeof heatRunSchema>;

/** Everything the technician decided. Nothing in it is derived from the board or from an evaluation. */
export const planSchema = z
  .strictObject({
    format: z.literal(PLAN_FORMAT),
    version: z.literal(PLAN_VERSION),
    ticket: ticketDataSchema,
    station: stationSchema,
    sites: z.array(siteSchema).max(50),
    heatRuns: z.array(heatRunSchema).max(50),
    tags: z.array(tagSchema).max(5000),
    straps: strapWorkSchema,
    exchanges: z.array(siteExchangeSchema).max(50),
    steps: stepWorkSchema,
    clampedTurnDeg: z
      .number()
      .describe('How the board lies in the clamp: degrees counter-clockwise; views and print turn with it.'),
  })
  .meta({
    title: 'Heatmargin plan',
    description: 'Ticket, station, sites, heat runs and tags of one rework. Lengths in mm, C, seconds.',
  });
export type Plan = z.infer<typeof planSchema>;

/** What one ticket holds. */
export type TicketDocument = { readonly board: Board; readonly plan: Plan };
