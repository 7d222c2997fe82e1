import type { Ink } from '../drawing/ink.ts';
import type { ActNumbers } from '../facts/act-numbers.ts';
import type { SheetFacts } from '../facts/sheet-facts.ts';
import type { Flow } from './flow.ts';

/** What every page gets: the pen, the running position, the facts. */
export type Sheet = { ink: Ink; flow: Flow; facts: SheetFacts; acts: readonly ActNumbers[] };
