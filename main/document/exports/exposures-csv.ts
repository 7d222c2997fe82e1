import type { Board } from '../../../shared-types/board.ts';
import type { Assessment, PartAction, PartExposure } from '../../../shared-types/evaluation.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import {
  bandCell,
  EXPOSURE_HEADINGS,
  notEvaluatedCell,
  STATE_CELLS,
  yesNo,
} from '../../../shared-types/words/exports.ts';
import { ACTION_NAMES, actionReason } from '../../../shared-types/words/planning.ts';
import { type CsvValue, csvBytes } from './csv.ts';

/**
 * What every part goes through, the worst over all heat runs, smallest margin first; then the parts that were not
 * evaluated, with the reason. C, K, mm, s; empty where nothing is known or no limit applies.
 */
export function exposuresCsv(board: Board, plan: Plan, { evaluation, actions }: Assessment): Uint8Array {
  const parts = new Map(board.parts.map((part) => [part.refdes, part]));
  const advice = new Map(actions.map((action) => [action.refdes, action]));
  const runs = new Map(plan.heatRuns.map(({ id, name }) => [id, name]));
  const head = (refdes: string): CsvValue[] => {
    const part = parts.get(refdes);
    return [refdes, part?.side ?? null, part?.class ?? null, part?.value ?? null, part?.package.name ?? null];
  };
  const evaluated = [...evaluation.parts]
    .sort((a, b) => a.marginK - b.marginK || (a.refdes < b.refdes ? -1 : 1))
    .map((exposure) => [...head(exposure.refdes), ...figures(exposure, runs), ...advised(advice.get(exposure.refdes))]);
  const left = evaluation.notEvaluated.map(({ refdes, reason }) => [...head(refdes), notEvaluatedCell(reason)]);
  const width = EXPOSURE_HEADINGS.length;
  return csvBytes(
    EXPOSURE_HEADINGS,
    [...evaluated, ...left].map((row) => [...row, ...Array.from({ length: width - row.length }, () => null)]),
  );
}

const tenth = (value: number | null | undefined): number | null =>
  value === null || value === undefined ? null : Math.round(value * 10) / 10;

function figures(one: PartExposure, runs: ReadonlyMap<string, string>): CsvValue[] {
  const { body, skin, joint, limits, margins } = one;
  return [
    STATE_CELLS[one.state],
    tenth(one.marginK),
    bandCell(one.bandK),
    one.governedBy,
    ...[body.maxC, skin.maxC, joint.maxC].map(tenth),
    ...[limits.body, limits.skin, limits.joint].map((limit) => tenth(limit?.celsius)),
    ...[margins.body, margins.skin, margins.joint].map(tenth),
    Math.round(one.clearanceMm * 100) / 100,
    runs.get(one.worstRunId) ?? one.worstRunId,
    tenth(one.peakAtS),
    tenth(one.secondsOver),
    one.reflow,
    one.reflows,
    one.warmCycles,
  ];
}

function advised(action: PartAction | undefined): CsvValue[] {
  return action ? [ACTION_NAMES[action.action], yesNo(action.done), actionReason(action)] : [null, null, null];
}
