import type { TurnRule } from '../../../../shared-types/import-choices.ts';

export type { TurnRule };

import { angleDifference, median, normalAngle, type Point } from '../plane.ts';
import { turnByPins } from './pin-turn.ts';

/** A part as the turn check sees it: written angle, side, and the middles of its pins in board axes. */
export interface TurnSample {
  readonly refdes: string;
  readonly side: 'top' | 'bottom';
  readonly packageName: string;
  readonly written: number;
  readonly pins: ReadonlyMap<string, Point>;
}

/** Common practice, no source: holds for most exports. */
export const USUAL_TURN: TurnRule = { top: 'same', bottom: 'same' };

export function applyTurn(written: number, side: 'top' | 'bottom', rule: TurnRule): number {
  switch (rule[side]) {
    case 'same':
      return normalAngle(written);
    case 'opposite':
      return normalAngle(-written);
    case 'fromHalfTurn':
      return normalAngle(180 - written);
    case 'plusHalfTurn':
      return normalAngle(180 + written);
  }
}

/**
 * A part's phase: the angle that turns its package's reference pattern into its own pins. For the bottom the pattern is
 * unmirrored first, which makes the phase run backwards: phase = turn + constant on top, -turn + constant on the bottom.
 */
interface Phase {
  readonly sample: TurnSample;
  readonly degrees: number;
  /** Root mean square of what the turned reference leaves, mm. */
  readonly misfitMm: number;
  readonly pinCount: number;
}

/** Parts of one package name with the same set of pins; their phases are relative to the first of them. */
export type PhaseGroup = readonly Phase[];

const SAME_PATTERN_MM = 0.05;
/** Beyond this many land patterns under one name, further parts stand alone. */
const MAX_FAMILIES = 40;

export function phaseGroups(samples: readonly TurnSample[]): PhaseGroup[] {
  const groups = new Map<string, { reference: TurnSample; phases: Phase[] }[]>();
  for (const sample of samples) {
    if (sample.pins.size < 2) continue;
    const key = `${sample.packageName} ${sample.pins.size}`;
    const families = groups.get(key) ?? [];
    groups.set(key, families);
    if (families.length >= MAX_FAMILIES || !families.some((family) => joinFamily(family, sample))) {
      families.push({ reference: sample, phases: [{ sample, degrees: 0, misfitMm: 0, pinCount: sample.pins.size }] });
    }
  }
  return [...groups.values()].flat().map(({ phases }) => phases);
}

/** Land patterns that differ under one package name make families of their own. */
function joinFamily(family: { reference: TurnSample; phases: Phase[] }, sample: TurnSample): boolean {
  const fit = fitTurn(unmirrored(family.reference), unmirrored(sample));
  if (fit === null || fit.misfitMm > SAME_PATTERN_MM) return false;
  family.phases.push({ sample, ...fit, pinCount: sample.pins.size });
  return true;
}

function unmirrored({ pins, side }: TurnSample): Map<string, Point> {
  return new Map([...pins].map(([pin, { x, y }]) => [pin, { x, y: side === 'bottom' ? -y : y }]));
}

/** Least-squares rotation between patterns about their means (Kabsch, Acta Crystallographica A32, 1976, in the plane). */
export function fitTurn(
  from: ReadonlyMap<string, Point>,
  to: ReadonlyMap<string, Point>,
): { degrees: number; misfitMm: number } | null {
  const pins = [...from.keys()].filter((pin) => to.has(pin));
  if (pins.length < 2 || pins.length !== to.size || pins.length !== from.size) return null;
  const a = aboutMean(pins.map((pin) => from.get(pin) as Point));
  const b = aboutMean(pins.map((pin) => to.get(pin) as Point));
  let [dot, cross, square] = [0, 0, 0];
  a.forEach((p, index) => {
    const q = b[index];
    dot += p.x * q.x + p.y * q.y;
    cross += p.x * q.y - p.y * q.x;
    square += p.x * p.x + p.y * p.y + q.x * q.x + q.y * q.y;
  });
  const left = Math.max(0, square - 2 * Math.hypot(dot, cross));
  return { degrees: normalAngle((Math.atan2(cross, dot) * 180) / Math.PI), misfitMm: Math.sqrt(left / pins.length) };
}

function aboutMean(points: readonly Point[]): Point[] {
  const x = points.reduce((sum, point) => sum + point.x, 0) / points.length;
  const y = points.reduce((sum, point) => sum + point.y, 0) / points.length;
  return points.map((point) => ({ x: point.x - x, y: point.y - y }));
}

const AGREES_DEGREES = 1;

/** What is left of a part's phase once its turn is taken off; equal for all parts of a group if the rule is right. */
function constantOf({ sample, degrees }: Phase, rule: TurnRule): number {
  const turn = applyTurn(sample.written, sample.side, rule);
  return normalAngle(sample.side === 'top' ? degrees - turn : degrees + turn);
}

/** The constant most parts of the group share. */
function commonConstant(group: PhaseGroup, rule: TurnRule): number {
  const constants = group.map((phase) => constantOf(phase, rule));
  const agreeing = (value: number) => constants.filter((other) => angleDifference(value, other) <= AGREES_DEGREES);
  const best = constants.reduce((a, b) => (agreeing(b).length > agreeing(a).length ? b : a));
  return normalAngle(best + median(agreeing(best).map((other) => ((other - best + 540) % 360) - 180)));
}

const TOP_RULES = ['same', 'opposite'] as const;
const BOTTOM_RULES = ['same', 'fromHalfTurn', 'opposite', 'plusHalfTurn'] as const;

export interface RuleVote {
  readonly rule: TurnRule;
  readonly agreeing: number;
  readonly of: number;
  /** Parts that another rule, as good by all others, would turn so that their pin 1 stands where it is usual. */
  readonly open: readonly string[];
}

/**
 * The rule under which most parts agree with others of their package; of rules that do so alike, the one under which pin 1 stands
 * where it is usual, if clearly more do. The usual rule where the pads cannot tell. A chosen one is held against them just the same.
 */
export function voteTurnRule(groups: readonly PhaseGroup[], chosen?: TurnRule): RuleVote {
  const telling = groups.filter((group) => group.length > 1);
  const of = telling.reduce((sum, group) => sum + group.length, 0);
  const agreeingWith = (rule: TurnRule) => telling.reduce((sum, group) => sum + countAgreeing(group, rule), 0);
  if (chosen) return { rule: chosen, agreeing: agreeingWith(chosen), of, open: [] };
  const votes = TOP_RULES.flatMap((top) =>
    BOTTOM_RULES.map(
      (bottom): RuleVote => ({ rule: { top, bottom }, agreeing: agreeingWith({ top, bottom }), of, open: [] }),
    ),
  );
  const most = Math.max(...votes.map(({ agreeing }) => agreeing));
  const tied = votes.filter(({ agreeing }) => agreeing === most);
  return tied.length > 1 && of > 0 ? byCustom(tied, groups) : tied[0];
}

/** So many parts more, and so large a share, must have pin 1 in its usual place before a rule beats the usual one. */
const [CLEARLY_MORE, CLEAR_SHARE] = [4, 0.75];

const isUsual = ({ rule }: RuleVote): boolean => rule.top === USUAL_TURN.top && rule.bottom === USUAL_TURN.bottom;

/** Packages that stand on one side alone leave half a turn open: pin 1 is on the left or upper left as a rule. */
function byCustom(tied: readonly RuleVote[], groups: readonly PhaseGroup[]): RuleVote {
  const customs = groups.flat().flatMap(({ sample }) => {
    const turn = turnByPins(sample.pins, sample.side);
    return turn === null ? [] : [{ sample, turn }];
  });
  const fits = ({ sample, turn }: (typeof customs)[number], { rule }: RuleVote): boolean =>
    angleDifference(applyTurn(sample.written, sample.side, rule), turn) <= AGREES_DEGREES;
  const usual = (vote: RuleVote): number => customs.filter((one) => fits(one, vote)).length;
  let best = { vote: tied[0], count: usual(tied[0]) };
  for (const vote of tied.slice(1)) {
    const count = usual(vote);
    const more = isUsual(best.vote) ? CLEARLY_MORE : 1;
    if (count >= best.count + more && count >= customs.length * CLEAR_SHARE) best = { vote, count };
  }
  const { vote } = best;
  const open = customs.filter((one) => !fits(one, vote) && tied.some((other) => fits(one, other)));
  return { ...vote, open: open.map(({ sample }) => sample.refdes) };
}

function countAgreeing(group: PhaseGroup, rule: TurnRule): number {
  const common = commonConstant(group, rule);
  return group.filter((phase) => angleDifference(constantOf(phase, rule), common) <= AGREES_DEGREES).length;
}

export interface TurnVerdict {
  readonly refdes: string;
  readonly twoPads: boolean;
  /** Degrees off the rest of its package; for two pads modulo 180. */
  readonly offDegrees: number;
  /** Two pads only: degrees off when the pin numbers count (modulo 360). */
  readonly offWithPins: number;
  /** How many parts of the package it was held against, itself included; 1: nothing to compare with. */
  readonly groupSize: number;
}

/** Every part's turn against the others of its package. */
export function judgeTurns(groups: readonly PhaseGroup[], rule: TurnRule): TurnVerdict[] {
  return groups.flatMap((group) => {
    const common = commonConstant(group, rule);
    return group.map((phase): TurnVerdict => {
      const constant = constantOf(phase, rule);
      const twoPads = phase.pinCount === 2;
      const offWithPins = angleDifference(constant, common);
      const offDegrees = twoPads ? angleDifference(constant, common, 180) : offWithPins;
      return { refdes: phase.sample.refdes, twoPads, offDegrees, offWithPins, groupSize: group.length };
    });
  });
}
