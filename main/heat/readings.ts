import type { RunResult, SegmentReading, WatchReading } from '../../shared-types/evaluation.ts';
import type { Station } from '../../shared-types/plan.ts';
import { probeSeries, type TicketRun } from './heat-run.ts';
import { outletC } from './scene-of-ticket.ts';
import { evenRows, peakOf, type Series, sampled, valueAt } from './series.ts';

/** Ends of a run's segments, s from its start. */
export function segmentEnds(run: TicketRun): number[] {
  let endS = 0;
  return run.presence.run.segments.map((segment) => {
    endS += segment.seconds;
    return endS;
  });
}

/** Predicted readings of the plan's watch points; one off the board has none. */
export function watchReadings(run: TicketRun): WatchReading[] {
  const ends = segmentEnds(run);
  return run.watchPoints.flatMap((tag, index) => {
    const place = run.places.watch[index]!;
    if (place < 0 || !run.simulation.probes.valid[place]) return [];
    const series = probeSeries(run, place, 'high');
    const peak = peakOf(series, run.scene.roomC);
    return {
      tagId: tag.id,
      name: tag.name,
      peakC: peak.celsius,
      peakAtS: peak.seconds,
      atSegmentEndC: ends.map((endS) => valueAt(series, endS, run.scene.roomC)),
    };
  });
}

/** The site's series on the worked face; the board's room where the run has no site on the board. */
function siteSeries(run: TicketRun): Series | null {
  const place = run.places.site;
  return place >= 0 && run.simulation.probes.valid[place] ? probeSeries(run, place, 'high') : null;
}

/** Set and outlet gas, source and site temperature at the end of each segment. */
export function segmentReadings(run: TicketRun, station: Station): SegmentReading[] {
  const { tracking } = run.simulation;
  const source: Series = {
    times: tracking.times,
    rows: tracking.rows,
    at: evenRows(tracking.sourceC),
  };
  const site = siteSeries(run);
  const { roomC } = run.scene;
  return segmentEnds(run).map((endsAtS, index) => {
    const { name, gas } = run.presence.run.segments[index]!;
    return {
      name,
      endsAtS,
      gasSetC: gas && station.gasReads === 'setting' ? gas.endC : null,
      gasOutletC: gas && outletC(station, gas.endC),
      preheaterSourceC: valueAt(source, endsAtS, roomC),
      siteC: site ? valueAt(site, endsAtS, roomC) : roomC,
    };
  });
}

/** Seconds between the values of a run's site series. */
const SITE_STEP_S = 1;

/** Board temperature at the site, one value a second from the run's start. */
export function siteSeriesOf(run: TicketRun): RunResult['siteSeries'] {
  const site = siteSeries(run);
  if (!site || site.rows === 0) return undefined;
  return { stepS: SITE_STEP_S, celsius: [...sampled(site, SITE_STEP_S, run.scene.roomC)] };
}
