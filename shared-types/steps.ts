import { z } from 'zod';

const id = z.string().min(1).max(200);
const phase = z
  .string()
  .min(1)
  .max(120)
  .describe("Part of the work: a name of its own, or 'run:' and 'after:' with a heat run's id.");
const text = z.string().max(2000);

/** A figure as read at the bench, beside the predicted one. `key`: which figure of the step. */
export const stepReadingSchema = z.strictObject({
  key: id,
  value: z
    .union([z.number(), z.string().max(200)])
    .describe('C, s, ohm, A, V, h or a count; words where the step asks for them.'),
});
export type StepReading = z.infer<typeof stepReadingSchema>;

/** What the technician did or noted about a step. It outlives the step: what is ticked stays ticked. */
export const stepMarkSchema = z.strictObject({
  stepId: id,
  done: z.boolean(),
  by: z.string().max(200).describe('Who; as entered.'),
  at: z.string().max(40).describe('When; as entered, by preference ISO 8601.'),
  readings: z.array(stepReadingSchema).max(40),
  note: text,
  words: text.describe('What the step said when it was ticked.'),
  phase,
});
export type StepMark = z.infer<typeof stepMarkSchema>;

/** A step that the technician added. */
export const ownStepSchema = z.strictObject({
  id: z.string().regex(/^own-\d{1,6}$/),
  phase,
  words: text.min(1),
  parts: z.array(z.string().min(1).max(64)).max(200),
});

/** A step taken to another place: into a phase, right behind a step of it, or at its head. */
export const stepMoveSchema = z.strictObject({ stepId: id, phase, behind: id.nullable() });
export type StepMove = z.infer<typeof stepMoveSchema>;

/** The plan's decisions about the order of work; the steps themselves are worked out from board and plan. */
export const stepWorkSchema = z.strictObject({
  own: z.array(ownStepSchema).max(500),
  moves: z.array(stepMoveSchema).max(2000).describe('In the order in which they were made.'),
  marks: z.array(stepMarkSchema).max(5000),
});
export type StepWork = z.infer<typeof stepWorkSchema>;

export const emptyStepWork = (): StepWork => ({ own: [], moves: [], marks: [] });
