import { z } from 'zod';
import { segmentSchema } from './profile.ts';

/** Finding a better profile (heat-model.md, section 9): in which bounds, and what was found. */

const range = (least: number, most: number) =>
  z
    .strictObject({ from: z.number().min(least).max(most), to: z.number().min(least).max(most) })
    .refine(({ from, to }) => from <= to, 'from lies above to');

/** What may change of a run's profile; everything else stays as it is. */
export const searchBoundsSchema = z.strictObject({
  belowC: range(0, 1000).describe('Preheater at the end of the soak; the other stretches move with it.'),
  leadS: range(1, 7200).describe('Preheat and soak together, s.'),
  gasC: range(0, 1200).describe('Gas once it is up.'),
  gasS: range(1, 3600).describe('Gas at each site, s.'),
  toPeakS: z.number().min(1).max(7200).describe('From the start to the end of the gas, at most.'),
});
export type SearchBounds = z.infer<typeof searchBoundsSchema>;

export const searchOrderSchema = z.strictObject({ runId: z.string().max(64), bounds: searchBoundsSchema });
export type SearchOrder = z.infer<typeof searchOrderSchema>;

export const SEARCH_KEYS = ['belowC', 'leadS', 'gasC', 'gasS'] as const;
export type SearchKey = (typeof SEARCH_KEYS)[number];

/** What keeps a profile from doing its work; `by`: how far it misses. */
export const MISS_CODES = ['cold', 'hot', 'short', 'long', 'skin', 'rise', 'late'] as const;
export type MissCode = (typeof MISS_CODES)[number];

const pointSchema = z.strictObject({
  belowC: z.number(),
  leadS: z.number(),
  gasC: z.number(),
  /** Per site, in the order in which they are blown at. */
  gasS: z.array(z.number()),
  segments: z.array(segmentSchema),
  toPeakS: z.number(),
  /** Smallest margin of a neighbour, K, after its band where bands count; null: no neighbour has a limit. */
  marginK: z.number().nullable(),
  worst: z
    .strictObject({
      ...{ refdes: z.string(), judgedOn: z.enum(['body', 'skin', 'joint']) },
      ...{ peakC: z.number(), limitC: z.number(), bandK: z.number() },
    })
    .nullable(),
  targets: z.array(
    z.strictObject({
      ...{ siteId: z.string(), refdes: z.string(), coldestC: z.number(), hottestC: z.number(), skinC: z.number() },
      ...{ allAboveS: z.number(), anyAboveS: z.number() },
      /** What its coldest joint needs: C, and s above liquidus. */
      ...{ leastC: z.number(), leastAboveS: z.number() },
    }),
  ),
  riseKPerS: z.number(),
  misses: z.array(z.strictObject({ code: z.enum(MISS_CODES), by: z.number(), refdes: z.string() })),
  /** Bounds that it lies at. */
  atBounds: z.array(z.enum(SEARCH_KEYS)),
  grid: z.enum(['coarse', 'fine']),
});
export type SearchPoint = z.infer<typeof pointSchema>;

export const searchAnswerSchema = z.strictObject({
  runId: z.string(),
  present: pointSchema,
  /** What is offered: on the fine map, in its window there; null: nothing in the bounds does its work. */
  best: pointSchema.nullable(),
  /** The nearest to doing its work, where nothing does. */
  nearest: pointSchema.nullable(),
  /** Profiles that no other beats in both time and margin, quickest first; coarse map. */
  front: z.array(pointSchema),
  tried: z.int(),
  /** True: margins are counted after the bands of the calibrated station. */
  banded: z.boolean(),
  /** Parts that were not judged: they come off before any heat. */
  leftOut: z.array(z.string()),
  riseLimitKPerS: z.number(),
});
export type SearchAnswer = z.infer<typeof searchAnswerSchema>;
