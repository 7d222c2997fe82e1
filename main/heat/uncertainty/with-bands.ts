import type { Evaluation, PartExposure, PartState, RunResult } from '../../../shared-types/evaluation.ts';
import { BAND_90, type PartBands, type TargetBands, TERM_IDS } from '../../../shared-types/uncertainty.ts';
import type { BandRuns } from './band-runs.ts';
import { figureName } from './figures.ts';
import { PRIOR_SIGMA } from './priors.ts';
import { bandOf } from './sensitivities.ts';

const OUTLET = TERM_IDS.indexOf('outlet');

/** `clear` above the band, `unsure` within it, `over` beyond (heat-model.md, section 7). */
export function stateOf(marginK: number, bandK: number): PartState {
  if (marginK > bandK) return 'clear';
  return marginK < -bandK ? 'over' : 'unsure';
}

/** Half width of a figure's 90 % band; null: it has none, as some run does not tell it. */
export function bandFor({ sensitivities, spans, belief, repeat }: BandRuns, name: string): number | null {
  const span = spans.get(name);
  if (span !== undefined) return span;
  const moves = sensitivities.get(name);
  return moves ? bandOf(moves, belief, repeat) : null;
}

/** The term that widens a band most, and what the band would be with a measured outlet. */
function causesOf({ belief, repeat }: BandRuns, moves: readonly number[]) {
  const variances = moves.map((move) => move * move);
  const hand = (repeat * moves[OUTLET]!) ** 2;
  const sum = variances.reduce((total, variance) => total + variance, hand);
  const largest = variances.indexOf(Math.max(...variances));
  const byHand = hand > variances[largest]!;
  const share = sum > 0 ? (byHand ? hand : variances[largest]!) / sum : 0;
  const measurable = belief.sigma[OUTLET]! > PRIOR_SIGMA.outlet.measured * 1.01;
  const measured = moves.map((move, term) =>
    term === OUTLET ? (move * PRIOR_SIGMA.outlet.measured) / belief.sigma[OUTLET]! : move,
  );
  const handOfIt = repeat * moves[OUTLET]!;
  return {
    mostly: byHand ? ('repeat' as const) : TERM_IDS[largest]!,
    mostlyShare: share,
    outletMeasuredK: measurable ? Math.hypot(bandOf(measured, belief, 0), BAND_90 * handOfIt) : null,
  };
}

function partWithBands(part: PartExposure, runs: BandRuns): PartExposure {
  const movesOf = (figure: 'body' | 'skin' | 'joint' | 'over') =>
    runs.sensitivities.get(figureName.part(part.refdes, figure));
  const governing = movesOf(part.governedBy);
  if (!governing) return part;
  const band = (figure: 'body' | 'skin' | 'joint' | 'over') => bandFor(runs, figureName.part(part.refdes, figure)) ?? 0;
  const bands: PartBands = {
    bodyK: band('body'),
    skinK: band('skin'),
    jointK: band('joint'),
    secondsOverS: band('over'),
    ...causesOf(runs, governing),
  };
  const bandK = bands[`${part.governedBy}K`];
  return { ...part, bands, bandK, state: stateOf(part.marginK, bandK) };
}

function runWithBands(run: RunResult, runs: BandRuns): RunResult {
  const band = (name: string) => bandFor(runs, name);
  const { runId } = run;
  return {
    ...run,
    targets: run.targets.map((target) => {
      const of = (figure: Parameters<typeof figureName.target>[2]) =>
        band(figureName.target(runId, target.siteId, figure));
      const bands: TargetBands = {
        coldestK: of('coldest') ?? 0,
        hottestK: of('hottest') ?? 0,
        skinK: of('skin') ?? 0,
        allAboveS: of('allAbove') ?? 0,
        anyAboveS: of('anyAbove') ?? 0,
        moltenS: of('molten'),
      };
      return of('coldest') === null ? target : { ...target, bands };
    }),
    watch: run.watch.map((reading) => {
      const peakBandK = band(figureName.watch(runId, reading.tagId, 'peak'));
      if (peakBandK === null) return reading;
      const ends = reading.atSegmentEndC.map((_, index) => band(figureName.watch(runId, reading.tagId, index)) ?? 0);
      return { ...reading, peakBandK, atSegmentEndBandK: ends };
    }),
    segments: run.segments.map((segment, index) => {
      const siteBandK = band(figureName.site(runId, index));
      return siteBandK === null ? segment : { ...segment, siteBandK };
    }),
  };
}

/** An evaluation of the same ticket with its bands and the states that follow from them; fields stay the same arrays. */
export function withBands(evaluation: Evaluation, runs: BandRuns): Evaluation {
  const { belief, repeatK } = runs;
  return {
    ...evaluation,
    parts: evaluation.parts.map((part) => partWithBands(part, runs)),
    runs: evaluation.runs.map((run) => runWithBands(run, runs)),
    bands: 'computed',
    bandFields: runs.fields,
    uncertainty: {
      terms: TERM_IDS.map((id, index) => ({
        id,
        sigma: belief.sigma[index]!,
        calibrated: belief.calibrated[index]!,
      })),
      repeatK,
    },
  };
}
