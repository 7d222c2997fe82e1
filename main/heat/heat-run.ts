import type { Board } from '../../shared-types/board.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { type Result, succeed } from '../../shared-types/problem.ts';
import type { Segment } from '../../shared-types/profile.ts';
import type { TagOf } from '../../shared-types/tags.ts';
import type { TermSteps } from '../../shared-types/uncertainty.ts';
import { bodyPoints } from './interpolation.ts';
import type { Presence } from './presence.ts';
import type { ProbeWish } from './probes.ts';
import type { HeatScene } from './scene.ts';
import { nozzleCentre, sceneOfTicket } from './scene-of-ticket.ts';
import { evenRows, type Series } from './series.ts';
import { createSimulation, type FootprintCache, type Simulation } from './simulation.ts';
import { calibratedSteps } from './uncertainty/calibrated.ts';
import { shiftScene } from './uncertainty/shift-scene.ts';

/** Where in a run's probes the places stand that its results ask for; -1: none. */
export type ProbePlaces = { site: number; targets: number[]; watch: number[] };

/** A heat run of a ticket, ready to be stepped. Bodies of the scene: parts of `presence` in order, then covers. */
export type TicketRun = {
  presence: Presence;
  scene: HeatScene;
  simulation: Simulation;
  wishes: ProbeWish[];
  /** Cell (m) and longest step (s) it was prepared with. */
  cellM: number;
  stepS: number;
  places: ProbePlaces;
  watchPoints: TagOf<'watchPoint'>[];
};

/** Nozzle centre of the run: that of its first blowing segment, else of its first segment. */
function siteCentre(plan: Plan, presence: Presence): { x: number; y: number } | null {
  const segments: Segment[] = presence.run.segments;
  const blowing = segments.find((segment) => segment.gas) ?? segments[0];
  return blowing ? nozzleCentre(plan, presence, blowing) : null;
}

/** A watch point on a part that is there reads its body, else the face of the board. */
function watchWish(scene: HeatScene, presence: Presence, watchPoint: TagOf<'watchPoint'>): ProbeWish {
  const points = [watchPoint.x / 1000, watchPoint.y / 1000];
  const part = presence.parts.findIndex(({ refdes }) => refdes === watchPoint.refdes);
  if (part >= 0) return { points, of: { body: part } };
  return { points, of: { face: watchPoint.side === scene.workedSide ? 'upper' : 'lower' } };
}

/**
 * Scene, grid and probes of one heat run; a scene that does not fit comes back as a problem.
 * @param steps the model's uncertain terms, moved from the station's values
 */
export function prepareRun(
  board: Board,
  plan: Plan,
  presence: Presence,
  cellM: number,
  stepS: number,
  footprints: FootprintCache,
  steps: TermSteps = {},
): Result<TicketRun> {
  const made = sceneOfTicket(board, plan, presence);
  if (!made.ok) return made;
  const scene = shiftScene(shiftScene(made.value, calibratedSteps(board, plan)), steps);
  const watchPoints = plan.tags.filter((tag) => tag.kind === 'watchPoint');
  const wishes: ProbeWish[] = [];
  const wish = (probe: ProbeWish | null): number => (probe ? wishes.push(probe) - 1 : -1);
  const centre = siteCentre(plan, presence);
  const places: ProbePlaces = {
    site: wish(centre && { points: [centre.x / 1000, centre.y / 1000], of: { face: 'upper' } }),
    targets: presence.sites.map((site) => {
      const body = scene.bodies.find((candidate) => candidate.id === site.target);
      if (!body) return -1;
      return wish({ points: bodyPoints(body), of: { face: body.side === scene.workedSide ? 'upper' : 'lower' } });
    }),
    watch: watchPoints.map((tag) => wish(watchWish(scene, presence, tag))),
  };
  const simulation = createSimulation(scene, cellM, stepS, wishes, footprints);
  return succeed({ presence, scene, simulation, wishes, cellM, stepS, places, watchPoints });
}

/** Series of a probe: its lowest or highest temperature. */
export function probeSeries(run: TicketRun, place: number, which: 'low' | 'high'): Series {
  const { probes, tracking } = run.simulation;
  const { times, rows } = tracking;
  return { times, rows, at: evenRows(probes[which], place, probes.count) };
}
