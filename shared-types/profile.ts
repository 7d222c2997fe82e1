import { z } from 'zod';
import { pointSchema } from './geometry.ts';

const celsius = z.number().min(-40).max(1200);
const ramp = z.strictObject({ startC: celsius, endC: celsius }).describe('Runs linearly inside the segment.');

/** One stretch of a heat run. */
export const segmentSchema = z.strictObject({
  name: z.string().min(1).max(100),
  seconds: z.number().positive().max(7200),
  preheater: ramp.describe('Source temperature, or with a sensor the board set temperature at it; C.'),
  gas: ramp
    .nullable()
    .default(null)
    .describe('Gas temperature (dial setting or measured outlet, see the station); null: gas off.'),
  flowLMin: z.number().min(0).max(500).default(0).describe('Gas flow at 20 C and 101325 Pa, L/min.'),
  siteId: z
    .string()
    .max(64)
    .nullable()
    .default(null)
    .describe('Site the nozzle stands over; null: the first site of the run.'),
  nozzleCentre: pointSchema.optional().describe('Own nozzle centre, mm; absent: the centre of the site.'),
});
export type Segment = z.infer<typeof segmentSchema>;

/** A profile without a board: what a shop keeps and reuses. */
export const profileSchema = z.strictObject({
  name: z.string().min(1).max(200),
  segments: z.array(segmentSchema).min(1).max(100),
});
export type Profile = z.infer<typeof profileSchema>;
