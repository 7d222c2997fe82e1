import type { Finding, RunResult, TargetResult } from '../../../shared-types/evaluation.ts';
import { alloyById } from '../../../shared-types/library/alloys.ts';
import { memory } from '../../../shared-types/library/sources.ts';
import type { HeatRun } from '../../../shared-types/plan.ts';
import type { Figures } from '../../../shared-types/words/figures.ts';
import type { PlanningContext } from '../context.ts';
import {
  ABOVE_LIQUIDUS_S,
  commonPractice,
  LIFTING_S,
  LONGEST_ABOVE_LIQUIDUS_S,
  LONGEST_TO_PEAK_S,
  SITE_PREHEAT_C,
} from '../published.ts';
import { firstGasSegment, gasAt } from '../segments.ts';
import { stiffenerNear } from './covers.ts';
import { finding, onRun, onSite } from './make.ts';

const MELTING = memory('Liquidus of the alloy; the coldest corner decides');
const WINDOW = commonPractice('removal 225-230 °C, installation 230-245 °C at the coldest joint');
const EVEN = memory('At most 10 °C across an array (IPC-7095, Intel manufacturing guide)');
const LARGEST_SPREAD_K = 10;
/** Below this at the site when the gas starts, preheat is the first thing to change: our assumption. */
const COOL_START_C = SITE_PREHEAT_C.value - 20;
const SHORT_GAS_S = 90;
/** Missed by no more than this, K, a window is a note: the estimate is no sharper. */
const NEAR_WINDOW_K = 3;

type Case = { context: PlanningContext; run: HeatRun; result: RunResult; target: TargetResult; about: Figures };

/** Board temperature at the site when the run's gas starts; null where the run begins with gas. */
function siteBeforeGas(run: HeatRun, result: RunResult): number | null {
  const first = firstGasSegment(run);
  return first === null || first === 0 ? null : (result.segments[first - 1]?.siteC ?? null);
}

/** What would bring a target over liquidus, most likely first; words by code. */
function meltingHelps({ context, run, result, target }: Case): string {
  const before = siteBeforeGas(run, result);
  const gas = gasAt(run, target.siteId);
  const site = context.plan.sites.find((candidate) => candidate.id === target.siteId);
  const helps = [
    site && stiffenerNear(context, site) ? 'stiffener' : '',
    gas === null ? 'gas' : '',
    before === null || before < COOL_START_C ? 'preheat' : '',
    gas && gas.untilS - gas.fromS < SHORT_GAS_S ? 'longer' : 'hotter',
  ];
  return helps.filter(Boolean).join(' ');
}

function meltingFindings(subject: Case): Finding[] {
  const { target, about } = subject;
  if (target.verdict === 'melts') return [];
  const figures = {
    ...about,
    coldestC: target.coldestJointC,
    hottestC: target.hottestJointC,
    liquidusC: target.liquidusC,
    shortK: Math.max(0, target.liquidusC - target.coldestJointC),
    helps: meltingHelps(subject),
  };
  return [finding('target-does-not-melt', 'stop', onSite(target.siteId), figures, MELTING)];
}

/** Predicted to melt, yet its coldest corner may stay below liquidus within the band. */
function unsureFindings({ target, about }: Case): Finding[] {
  const aboveK = target.coldestJointC - target.liquidusC;
  if (target.verdict !== 'melts' || !target.bands || aboveK > target.bands.coldestK) return [];
  const figures = {
    ...about,
    coldestC: target.coldestJointC,
    bandK: target.bands.coldestK,
    liquidusC: target.liquidusC,
  };
  return [finding('target-unsure', 'note', onSite(target.siteId), figures, MELTING)];
}

function windowFindings({ target, about }: Case): Finding[] {
  if (!target.windowC || target.verdict !== 'melts') return [];
  const { from, to } = target.windowC;
  const figures = { ...about, coldestC: target.coldestJointC, fromC: from, toC: to };
  const missedK = Math.max(from - target.coldestJointC, target.coldestJointC - to);
  const weight = missedK > NEAR_WINDOW_K ? 'warn' : 'note';
  if (target.coldestJointC < from)
    return [finding('window-missed-cold', weight, onSite(target.siteId), figures, WINDOW)];
  return target.coldestJointC > to
    ? [finding('window-missed-hot', weight, onSite(target.siteId), figures, WINDOW)]
    : [];
}

function skinFindings({ run, target, about }: Case): Finding[] {
  if (target.skinMaxC <= target.skinLimitC) return [];
  const figures = { ...about, skinC: target.skinMaxC, limitC: target.skinLimitC };
  const source = memory('J-STD-020: the peak must not exceed Tc; 5 °C kept for the measurement');
  const comesOff = run.kind === 'removal';
  return [
    finding(
      comesOff ? 'outgoing-package-too-hot' : 'package-too-hot',
      comesOff ? 'warn' : 'stop',
      onSite(target.siteId),
      figures,
      source,
    ),
  ];
}

function timeFindings({ run, target, about }: Case): Finding[] {
  if (target.verdict !== 'melts') return [];
  const place = onSite(target.siteId);
  const figures = { ...about, allS: target.secondsAllAbove, anyS: target.secondsAnyAbove };
  const found: Finding[] = [];
  const { from, to } = ABOVE_LIQUIDUS_S;
  const limit = LONGEST_ABOVE_LIQUIDUS_S;
  if (target.secondsAnyAbove > limit.value)
    found.push(finding('too-long-above-liquidus', 'warn', place, { ...figures, limitS: limit.value }, limit.source));
  if (run.kind === 'removal' && target.secondsAllAbove < LIFTING_S.value)
    found.push(finding('short-for-lifting', 'warn', place, { ...figures, wantedS: LIFTING_S.value }, LIFTING_S.source));
  if (run.kind !== 'installation') return found;
  const window = { ...figures, fromS: from, toS: to };
  if (target.secondsAllAbove < from)
    found.push(
      finding(
        'above-liquidus-short',
        target.secondsAllAbove < 0.9 * from ? 'warn' : 'note',
        place,
        window,
        ABOVE_LIQUIDUS_S.source,
      ),
    );
  else if (target.secondsAnyAbove > to && target.secondsAnyAbove <= limit.value)
    found.push(finding('above-liquidus-long', 'warn', place, window, ABOVE_LIQUIDUS_S.source));
  return found;
}

function evennessFindings({ target, about }: Case): Finding[] {
  const spreadK = target.hottestJointC - target.coldestJointC;
  if (spreadK <= LARGEST_SPREAD_K) return [];
  return [finding('target-uneven', 'note', onSite(target.siteId), { ...about, spreadK }, EVEN)];
}

/** One entry a run, not a target: preheat serves all of them. */
function preheatFindings(run: HeatRun, result: RunResult): Finding[] {
  const siteC = siteBeforeGas(run, result);
  if (siteC === null || siteC >= COOL_START_C) return [];
  const figures = { runName: run.name, siteC, usualC: SITE_PREHEAT_C.value };
  return [finding('cool-when-gas-starts', 'note', onRun(run.id), figures, SITE_PREHEAT_C.source)];
}

/** J-STD-020 counts from 25 C to the peak; the first target's peak is the end of the last gas at its site. */
function durationFindings({ context, run, target, about }: Case): Finding[] {
  const gas = gasAt(run, target.siteId);
  const site = context.plan.sites.find((candidate) => candidate.id === target.siteId);
  if (!gas || !site) return [];
  const alloy = alloyById(run.kind === 'installation' ? site.alloyOn : site.alloyOff);
  const limitS = alloy && !alloy.leadFree ? LONGEST_TO_PEAK_S.tinLead : LONGEST_TO_PEAK_S.leadFree;
  if (gas.untilS <= limitS) return [];
  const figures = { ...about, seconds: gas.untilS, limitS };
  return [finding('long-to-peak', 'note', onSite(target.siteId), figures, LONGEST_TO_PEAK_S.source)];
}

const CHECKS = [
  meltingFindings,
  unsureFindings,
  windowFindings,
  skinFindings,
  timeFindings,
  evennessFindings,
  durationFindings,
];

/** What is wrong with the targets themselves: not molten, out of their window, cooked, too short or too long. */
export function targetFindings(context: PlanningContext): Finding[] {
  return context.evaluation.runs.flatMap((result) => {
    const run = context.runs.get(result.runId);
    if (!run || run.kind === 'site-preparation' || run.kind === 'cover-removal') return [];
    const each = result.targets.flatMap((target) => {
      const about = { refdes: target.refdes, runName: run.name };
      return CHECKS.flatMap((check) => check({ context, run, result, target, about }));
    });
    return [...each, ...preheatFindings(run, result)];
  });
}
