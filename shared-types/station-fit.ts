import { z } from 'zod';

/** Film and lag of a preheater as they fit readings of the board over it, and what is left over. */
export const preheaterFitSchema = z.strictObject({
  filmWm2K: z.number(),
  lagS: z.number(),
  /** Standard deviation that the readings leave of the film's logarithm. */
  filmSigma: z.number(),
  /** Root mean square of what is left, K. */
  residualK: z.number(),
  readings: z.array(z.strictObject({ atS: z.number(), boardC: z.number(), fittedC: z.number() })),
});
export type PreheaterFit = z.infer<typeof preheaterFitSchema>;
