import { z } from 'zod';

const finite = z.number();
const positive = z.number().positive();
const notNegative = z.number().min(0);
const celsius = z.number().min(-40).max(2000);
const point = z.tuple([finite, finite]);
const ramp = z.tuple([celsius, celsius]);
const side = z.enum(['top', 'bottom']);

const hood = z.looseObject({
  h: positive.default(100).describe('Film inside the rim at 30 L/min, W/m2K.'),
  gap: positive.describe('Rim gap, m.'),
  leak: z.number().min(0).max(1),
});

const held = {
  H: notNegative.default(0),
  sweep: notNegative.default(0),
  tilt: z.number().min(-89).max(89).default(0),
  heading: finite.default(0),
  hood: hood.nullish(),
};

const nozzle = z.discriminatedUnion('shape', [
  z.looseObject({ shape: z.literal('round'), D: positive, ...held }),
  z.looseObject({ shape: z.literal('rect'), l: positive, w: positive, turn: finite.default(0), ...held }),
]);

const part = z.looseObject({
  ref: z.string().min(1),
  side,
  x: finite,
  y: finite,
  l: positive,
  w: positive,
  height: positive,
  g: notNegative,
  rhoc: positive,
  k: positive,
  turn: finite.default(0),
  eps: z.number().min(0).max(1).optional(),
});

const preheater = z.looseObject({
  x: finite,
  y: finite,
  l: positive,
  w: positive,
  turn: finite.default(0),
  h: notNegative,
  lag: notNegative,
  sensor: point.nullish(),
  max: celsius.nullish(),
});

const segment = z.looseObject({
  s: positive.max(36000),
  pre: ramp.nullish(),
  gas: ramp.nullish(),
  flow: notNegative.nullish(),
  at: point.nullish(),
});

/** The case form that `heat-model.md`'s worked example is written in: SI units and °C. `expected` is never read. */
export const exampleCaseSchema = z.looseObject({
  room: celsius,
  entrained: celsius.optional(),
  side: side.default('top'),
  board: z.looseObject({
    W: positive,
    H: positive,
    t: positive,
    rhoc: positive,
    kpar: notNegative,
    kthru: notNegative,
    eps: z.number().min(0).max(1).default(0.9),
    cutouts: z.array(z.tuple([finite, finite, finite, finite])).default([]),
  }),
  parts: z.array(part),
  site: z.looseObject({ x: finite, y: finite }).nullish(),
  nozzle: nozzle.nullish(),
  hood: hood.nullish(),
  preheater: preheater.nullish(),
  shields: z
    .array(z.looseObject({ ref: z.string(), R: notNegative, mc: notNegative.default(0) }))
    .nullish()
    .transform((list) => list ?? []),
  profile: z.array(segment).min(1),
});

export type ExampleCase = z.infer<typeof exampleCaseSchema>;
