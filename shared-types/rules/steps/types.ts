import type { Source } from '../../library/library-types.ts';
import type { StepMark } from '../../steps.ts';
import type { CautionId } from '../../words/cautions.ts';
import type { Figures } from '../../words/figures.ts';

/** Kinds of steps in the order in which they stand inside a phase where nothing else orders them. */
// biome-ignore format: one line for each stretch of the work
export const STEP_KINDS = [
  'record', 'note-resistance', 'note-power', 'in-circuit-first', 'read-out', 'data-block',
  'power-off', 'coating-off', 'off', 'cover-off', 'bake-part', 'bake-board', 'relocate', 'secure', 'shield', 'fence',
  'thermocouple', 'set-up', 'gel', 'incoming', 'program-part', 'place', 'heat', 'can-off', 'lift', 'cool', 'dress',
  'inspect-pads', 'count-off', 'shields-off', 'inspect-joints', 'move-strap', 'back', 'inspect-reflowed', 'clean',
  'cover-back', 'count-back', 'no-shorts', 'polarity', 'strap-read', 'program-in-circuit', 'supply', 'current',
  'cell-back', 'read-back', 'strap-report', 'function-test', 'coat-again', 'hand-back', 'own',
] as const;
export type StepKind = (typeof STEP_KINDS)[number];

/** Phases that are always of these names; those of heat runs are 'run:ID' and 'after:ID'. */
export const FIXED_PHASES = [
  'received',
  'before-heat',
  'covers',
  'afterwards',
  'before-power',
  'power-on',
  'hand-back',
] as const;
export const runPhase = (runId: string): string => `run:${runId}`;
export const afterPhase = (runId: string): string => `after:${runId}`;

export type Phase = {
  id: string;
  /** The heat run it belongs to, and which of how many. */
  run: { id: string; name: string; place: number; of: number } | null;
};

export const READING_UNITS = ['C', 's', 'ohm', 'A', 'count', 'h', 'text'] as const;
export type ReadingUnit = (typeof READING_UNITS)[number];

/** A figure that is read at the step; `predicted` null: nothing foretells it. `of`: thermocouple, part or group. */
export type Expected = {
  key: string;
  name: ReadingName;
  of: string;
  unit: ReadingUnit;
  predicted: number | string | null;
  bandK?: number;
  /** What is read must be this, exactly: a count or a code. */
  exact?: true;
};
export type ReadingName =
  | 'resistance'
  | 'current'
  | 'check-sum-1'
  | 'check-sum-2'
  | 'check-sum'
  | 'off'
  | 'back'
  | 'bake-c'
  | 'bake-h'
  | 'at-gas-on'
  | 'at-gas-off'
  | 'site-at-gas-on'
  | 'molten-at'
  | 'gas-off-at'
  | 'open-h'
  | 'code'
  | 'reported';

/** A step as a rule makes it, before it has its place. */
export type StepDraft = {
  /** Made of its kind and what it is about: the same for the same work, whatever else the plan says. */
  id: string;
  kind: StepKind;
  phase: string;
  parts: readonly string[];
  figures: Figures;
  expects: readonly Expected[];
  /** null: common practice, no source. */
  source: Source | null;
  cautions: readonly CautionId[];
  /** What stands in its way; its words say so. */
  alert: 'stop' | 'warn' | null;
  /** Place in the plan's order of tags. */
  tagOrder: number | null;
  tagId: string | null;
  /** Orders steps of one kind in one phase where no tag does. */
  rank: number;
};

/** Why one step waits for another; sentences in words/steps. */
// biome-ignore format: a list of names
export const WAIT_REASONS = [
  'note-before-off', 'power-off-first', 'cell-before-heat', 'off-before-heat', 'can-before-part', 'coating-before-heat',
  'coating-before-iron', 'read-out-before-heat', 'block-from-read-out', 'in-circuit-before-heat', 'bake-weakest-off',
  'bake-before-heat', 'bake-before-gel', 'bake-before-solder', 'shield-before-heat', 'set-before-heat', 'count-after-off',
  'count-before-heat', 'runs-in-order', 'melt-before-lift', 'warm-before-dress', 'cool-after-heat', 'lift-before-dress',
  'dress-before-inspect', 'inspect-before-place', 'part-before-place', 'block-before-program', 'program-before-place',
  'place-before-heat', 'cold-before-touch', 'strap-after-heat', 'strap-ring', 'under-before-cover', 'clean-before-cover', 'back-before-count',
  'soldered-before-clean', 'on-before-check', 'strap-before-read', 'shorts-before-programmer', 'checks-before-power',
  'clean-before-power', 'counted-before-power', 'supply-first', 'current-before-cell', 'all-before-test',
  'clean-before-coat', 'test-before-coat', 'test-before-hand-back', 'coat-before-hand-back',
] as const;
export type WaitReason = (typeof WAIT_REASONS)[number];
/** `step` may not come before `on`. Both are ids. */
export type Wait = { step: string; on: string; reason: WaitReason };

/** A step in its place. */
export type Step = StepDraft & {
  mark: StepMark | null;
  done: boolean;
  /** Set when the technician moved it here. */
  moved: boolean;
  /** Words of an own step, or of one that no longer applies. */
  own: string | null;
};

/** What does not agree. */
export type StepFault =
  | { code: 'count-differs'; stepId: string; which: 'off' | 'back'; counted: number; planned: number }
  | { code: 'read-outs-differ'; stepId: string; refdes: string }
  | { code: 'code-differs'; stepId: string; of: string; read: string; wanted: string }
  | { code: 'done-before'; stepId: string; on: string; reason: WaitReason }
  /** The plan's order, or a move made earlier, against what must come first. */
  | { code: 'order-against'; stepId: string; on: string; reason: WaitReason }
  | { code: 'cannot-order'; stepId: string; on: string; reason: WaitReason };

export type StepPlan = {
  phases: Phase[];
  /** In the order of work. */
  steps: Step[];
  waits: Wait[];
  /** Ticked or noted steps that no longer apply. */
  gone: StepMark[];
  faults: StepFault[];
};
