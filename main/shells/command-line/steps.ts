import { tellAssessed } from './evaluate.ts';
import type { Command } from './outcome.ts';
import { stepJson, stepLinesOf } from './step-lines.ts';

/** `steps TICKET [--json] [--coarse]`: the work in order, with what is ticked. */
export const stepsCommand: Command = (words, tools) => tellAssessed(words, tools, stepJson, stepLinesOf);
