import type { EvaluationNotice } from '../../shared-types/evaluation.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { outletIsKnown } from '../../shared-types/rules/outlet.ts';
import type { HeatNoticeCode } from '../../shared-types/words/heat.ts';
import type { TicketRun } from './heat-run.ts';
import type { HeatState } from './heat-state.ts';
import { jetStrength, mouthDiameter } from './nozzle.ts';
import type { HeatScene } from './scene.ts';

/** Range of the jet law (Martin 1977; figures.md, E3). */
const REYNOLDS = { from: 2000, to: 400000 } as const;
const STAND_OFF_RATIO = { from: 2, to: 12 } as const;

function notice(
  code: HeatNoticeCode,
  place: string | null,
  figures: EvaluationNotice['figures'] = {},
): EvaluationNotice {
  return { code, place, figures };
}

/** Reynolds numbers of an open nozzle outside the range of its law, by run. */
function jetNotices(scene: HeatScene, runName: string): EvaluationNotice[] {
  const { nozzle } = scene;
  const blowing = scene.segments.filter((segment) => segment.gas);
  if (!nozzle || blowing.length === 0) return [];
  if (nozzle.infrared) return [notice('emitter-assumed', runName, { emissivity: nozzle.infrared.emissivity })];
  if (nozzle.hood) return [notice('hood-film-assumed', runName, { film: nozzle.hood.filmAt30 })];
  const numbers = blowing.flatMap(({ gas }) => [
    jetStrength(nozzle, gas!.startC, gas!.flowStart).reynolds,
    jetStrength(nozzle, gas!.endC, gas!.flowEnd).reynolds,
  ]);
  const lowest = Math.min(...numbers);
  const highest = Math.max(...numbers);
  const found: EvaluationNotice[] = [];
  if (lowest < REYNOLDS.from) found.push(notice('reynolds-low', runName, { reynolds: lowest, ...REYNOLDS }));
  if (highest > REYNOLDS.to) found.push(notice('reynolds-high', runName, { reynolds: highest, ...REYNOLDS }));
  const ratio = nozzle.standOffM / mouthDiameter(nozzle.mouth);
  if (ratio < STAND_OFF_RATIO.from || ratio > STAND_OFF_RATIO.to) {
    found.push(notice('stand-off-out-of-range', runName, { ratio, ...STAND_OFF_RATIO }));
  }
  return found;
}

/** When the water of each gel was gone: the first place of it to fall dry, or that it lasted. */
function gelNotices({ entries, overlays }: HeatState, { bodies }: HeatScene, runName: string): EvaluationNotice[] {
  const dried = new Map<string, number>();
  for (let index = 0; index < overlays.count; index++) {
    const order = entries.bodyStart.findIndex((start) => start > overlays.entry[index]!) - 1;
    const body = bodies[entries.bodyOfScene[order]!]!;
    if (!body.overlay?.waterKgM2) continue;
    const at = overlays.driedAtS[index]!;
    dried.set(body.id, Math.min(dried.get(body.id) ?? Number.POSITIVE_INFINITY, Number.isNaN(at) ? Infinity : at));
  }
  return [...dried].map(([refdes, seconds]) =>
    Number.isFinite(seconds)
      ? notice('gel-dries', `${runName}: ${refdes}`, { refdes, seconds, run: runName })
      : notice('gel-lasts', `${runName}: ${refdes}`, { refdes, run: runName }),
  );
}

/** What one finished run wants said about itself. */
export function runNotices({ presence, scene, simulation, watchPoints, places }: TicketRun): EvaluationNotice[] {
  const { name, kind } = presence.run;
  const { state, probes } = simulation;
  const found: EvaluationNotice[] = [];
  if (state.grid.grown) found.push(notice('grid-grown', name, { cellMm: state.grid.cellM * 1000 }));
  if (kind === 'site-preparation') found.push(notice('iron-not-modelled', name));
  found.push(...jetNotices(scene, name), ...gelNotices(state, scene, name));
  watchPoints.forEach((tag, index) => {
    if (!probes.valid[places.watch[index]!]) found.push(notice('watch-point-off-board', tag.name));
  });
  return found;
}

/** What an evaluation wants said about the plan and its own limits, `ofRuns` in order; each notice once a run. */
export function evaluationNotices(plan: Plan, ofRuns: readonly EvaluationNotice[][]): EvaluationNotice[] {
  const ofStation = outletIsKnown(plan.station) ? [] : [notice('outlet-from-setting', null)];
  const seen = new Set<string>();
  return [...ofStation, ...ofRuns.flat()].filter((one) => {
    const key = `${one.code}|${one.place}`;
    return seen.has(key) ? false : seen.add(key);
  });
}
