import { z } from 'zod';
import type { MainEvent } from './contract.ts';
import type { Result } from './problem.ts';

/** What travels in the frames, in both directions. `serial` ties an answer to its request. */
export const requestMessageSchema = z.strictObject({
  kind: z.literal('request'),
  serial: z.int().min(0),
  name: z.string().max(100),
  input: z.unknown(),
});
export type RequestMessage = z.infer<typeof requestMessageSchema>;
export type AnswerMessage = { kind: 'answer'; serial: number; result: Result<unknown> };
export type EventMessage = { kind: 'event'; event: MainEvent };
export type MessageToWindow = AnswerMessage | EventMessage;
