import { z } from 'zod';
import { calibrationSchema } from './plan.ts';
import { TERM_IDS } from './uncertainty.ts';

/** Long work on one ticket that the user starts: its orders and what comes of them. */

/** How a bead was fastened: it says how far its reading may be off. */
export const ATTACHMENTS = ['soldered', 'epoxy', 'taped'] as const;
export type Attachment = (typeof ATTACHMENTS)[number];

const floats = z.custom<Float32Array>((value) => value instanceof Float32Array);
/** Samples of one bead: s and C, one beside the other. */
const samplesSchema = z
  .strictObject({ atS: floats, celsius: floats })
  .refine(({ atS, celsius }) => atS.length === celsius.length, 'times and temperatures differ in number');

/** A temperature log as it was read: its columns in s from the first row and C; gaps are left out and counted. */
export const logTableSchema = z.strictObject({
  columns: z.array(z.strictObject({ name: z.string(), gaps: z.int(), samples: samplesSchema })),
  rows: z.int(),
  seconds: z.number(),
});
export type LogTable = z.infer<typeof logTableSchema>;

/** Where a fit stands: rounds done, and what is left between log and model, root mean square, K. */
export type FitProgress = { round: number; leftK: number };

/** What is to be fitted: a logged heat run and its beads; `samples` in s from the run's start. */
export const calibrationOrderSchema = z.strictObject({
  runId: z.string().max(64),
  logName: z.string().max(300),
  points: z
    .array(
      z.strictObject({
        tagId: z.string().max(64),
        attachment: z.enum(ATTACHMENTS),
        samples: samplesSchema.nullable(),
        peakC: z.number().min(-40).max(700).nullable(),
      }),
    )
    .min(1)
    .max(50),
});
export type CalibrationOrder = z.infer<typeof calibrationOrderSchema>;

/** What a log told: nothing is changed by asking. */
export const calibrationAnswerSchema = z.strictObject({
  calibration: calibrationSchema,
  /** Per term in its own coordinate; `told` false: the log did not identify it. */
  terms: z.array(
    z.strictObject({
      ...{ id: z.enum(TERM_IDS), step: z.number(), priorSigma: z.number(), sigma: z.number(), told: z.boolean() },
    }),
  ),
  /** Per bead, K: what is left, and the bias found for it. */
  residuals: z.array(z.strictObject({ tagId: z.string(), rmsK: z.number(), worstK: z.number(), biasK: z.number() })),
  /** Per bead with samples: what it read, and what the model says there without and with what was found; C. */
  curves: z.array(z.strictObject({ tagId: z.string(), atS: floats, read: floats, before: floats, after: floats })),
  /** Typed peaks, the same way. */
  peaks: z.array(z.strictObject({ tagId: z.string(), read: z.number(), before: z.number(), after: z.number() })),
});
export type CalibrationAnswer = z.infer<typeof calibrationAnswerSchema>;
