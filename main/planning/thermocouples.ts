import type { Board } from '../../shared-types/board.ts';
import type { Evaluation, RunResult } from '../../shared-types/evaluation.ts';
import { rectangleCorners } from '../../shared-types/geometry.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { TagOf } from '../../shared-types/tags.ts';
import { BAND_90, TERM_IDS, type ThermocouplePlace } from '../../shared-types/uncertainty.ts';
import type { BandRuns } from '../heat/uncertainty/band-runs.ts';
import { figureName } from '../heat/uncertainty/figures.ts';
import { narrowed, type Reading, startCovariance, varianceUnder } from '../heat/uncertainty/narrowing.ts';
import { chooseGreedily, type Wished } from './choose-places.ts';

type Watch = TagOf<'watchPoint'>;
/** A place where a thermocouple could go, as a watch point that the band runs read. */
type Candidate = { tag: Watch; siteId: string | null };

/** Names of candidates are no names of tags: ids of a plan are never that long. */
const MARK = 'candidate-thermocouple-';
/** How many neighbours are thought of, the nearest to a site first. */
const NEIGHBOURS = 24;
/** How many places are told. */
const PLACES = 6;
/** Fastened with epoxy or tape beside the jet, one standard deviation, K; what is left of it from reading to reading. */
const BIAS_K = 4;
const NOISE_K = 1;

const watchAt = (number: number, place: Pick<Watch, 'side' | 'x' | 'y' | 'refdes'>): Watch => ({
  ...{ id: `${MARK}${number}`, kind: 'watchPoint', name: '', order: null, note: '' },
  ...place,
});

/** Corners of the targets, and the middles of the nearest neighbours that stay on. */
export function candidatesOf(board: Board, plan: Plan): Candidate[] {
  const parts = new Map(board.parts.map((part) => [part.refdes, part]));
  const off = new Set(plan.tags.flatMap((tag) => (tag.kind === 'remove' ? [tag.refdes] : [])));
  const targets = new Set(plan.sites.map((site) => site.target));
  const corners = plan.sites.flatMap((site) => {
    const part = parts.get(site.target);
    if (!part) return [];
    const { lengthMm, widthMm } = part.package;
    const body = { x: part.x, y: part.y, lengthMm, widthMm, turnDeg: part.turn };
    return rectangleCorners(body).map(({ x, y }) => ({
      siteId: site.id,
      place: { side: part.side, x, y, refdes: null },
    }));
  });
  const distance = ({ x, y }: { x: number; y: number }) =>
    Math.min(...plan.sites.map(({ area }) => Math.hypot(x - area.x, y - area.y)));
  const neighbours = board.parts
    .filter((part) => part.fitted && !off.has(part.refdes) && !targets.has(part.refdes))
    .map((part) => ({ part, mm: distance(part) }))
    .sort((a, b) => a.mm - b.mm || (a.part.refdes < b.part.refdes ? -1 : 1))
    .slice(0, NEIGHBOURS)
    .map(({ part: { side, x, y, refdes } }) => ({ siteId: null, place: { side, x, y, refdes } }));
  return [...corners, ...neighbours].map(({ siteId, place }, index) => ({ siteId, tag: watchAt(index, place) }));
}

/** The plan with its candidates as watch points: what the band runs read. */
export const withCandidates = (plan: Plan, candidates: readonly Candidate[]): Plan => ({
  ...plan,
  tags: [...plan.tags, ...candidates.map(({ tag }) => tag)],
});

type Told = { candidate: Candidate; reading: Reading; run: RunResult; peakC: number };

const OUTLET = TERM_IDS.indexOf('outlet');
const withHand = (moves: readonly number[], repeat: number): number[] => [...moves, repeat * moves[OUTLET]!];

/** What each candidate would tell in the run in which it gets hottest: before the gas, and at its peak. */
function toldBy(base: Evaluation, runs: BandRuns, candidates: readonly Candidate[]): Told[] {
  return candidates.flatMap((candidate): Told[] => {
    const read = base.runs.flatMap((run) => {
      const reading = run.watch.find((one) => one.tagId === candidate.tag.id);
      return reading ? [{ run, peakC: reading.peakC }] : [];
    });
    const hottest = read.sort((a, b) => b.peakC - a.peakC)[0];
    if (!hottest) return [];
    const { run } = hottest;
    const beforeGas = run.segments.findIndex((segment) => segment.gasOutletC !== null) - 1;
    const names = [figureName.watch(run.runId, candidate.tag.id, 'peak')];
    if (beforeGas >= 0) names.push(figureName.watch(run.runId, candidate.tag.id, beforeGas));
    const moves = names.flatMap((name) => {
      const found = runs.sensitivities.get(name);
      return found ? [withHand(found, runs.repeat)] : [];
    });
    return [{ candidate, ...hottest, reading: { moves, biasK: BIAS_K, noiseK: NOISE_K } }];
  });
}

/** Moves of what is to be surer: the coldest joints of the targets, and the parts within their band. */
function wished(base: Evaluation, { sensitivities, repeat }: BandRuns): Wished {
  const of = (name: string) => {
    const moves = sensitivities.get(name);
    return moves ? [withHand(moves, repeat)] : [];
  };
  const targets = base.runs.flatMap(({ runId, targets: all }) =>
    all.flatMap(({ siteId }) => of(figureName.target(runId, siteId, 'coldest'))),
  );
  const parts = base.parts
    .filter((part) => part.state === 'unsure')
    .flatMap(({ refdes, governedBy }) => of(figureName.part(refdes, governedBy)));
  return { targets, parts };
}

/** What is chosen among, what for, and what is chosen in any case: the coldest corners. `base` with its bands. */
export function choiceOf(base: Evaluation, runs: BandRuns, candidates: readonly Candidate[]) {
  const told = toldBy(base, runs, candidates);
  return {
    ...{ told, wish: wished(base, runs), readings: told.map(({ reading }) => reading) },
    start: startCovariance(runs.belief.correlation, TERM_IDS.length, 1),
    given: coldestCorners(told).map((one) => told.indexOf(one)),
  };
}

/**
 * Where thermocouples make figures surest: the coldest corner of each target first, then greedily the place that takes most off
 * the variance of targets and unsure parts. `base` with its bands.
 */
export function thermocouplePlaces(
  base: Evaluation,
  runs: BandRuns,
  candidates: readonly Candidate[],
): ThermocouplePlace[] {
  const { told, wish, start, readings, given } = choiceOf(base, runs, candidates);
  let covariance = start;
  return chooseGreedily(start, readings, wish, given, Math.max(PLACES, given.length)).map((index) => {
    const one = told[index]!;
    const { side, x, y, refdes } = one.candidate.tag;
    const bandK = BAND_90 * Math.sqrt(varianceUnder(covariance, one.reading.moves[0] ?? []));
    covariance = narrowed(covariance, one.reading);
    const left = Math.max(0, ...wish.targets.map((moves) => varianceUnder(covariance, moves)));
    return {
      ...{ side, x, y, refdes, siteId: one.candidate.siteId, runId: one.run.runId },
      ...{ expectedC: one.peakC, bandK, targetBandK: BAND_90 * Math.sqrt(left) },
    };
  });
}

/** Of each site the corner that stays coldest. */
function coldestCorners(told: readonly Told[]): Told[] {
  const coldest = new Map<string, Told>();
  for (const one of told) {
    const { siteId } = one.candidate;
    if (siteId === null) continue;
    const known = coldest.get(siteId);
    if (!known || one.peakC < known.peakC) coldest.set(siteId, one);
  }
  return [...coldest.values()];
}
