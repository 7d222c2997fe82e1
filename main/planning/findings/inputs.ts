import type { EvaluationNotice, Finding } from '../../../shared-types/evaluation.ts';
import { alloyById, meltingRange } from '../../../shared-types/library/alloys.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import type { Source } from '../../../shared-types/library/library-types.ts';
import { assumption, found } from '../../../shared-types/library/sources.ts';
import { outletIsKnown } from '../../../shared-types/rules/outlet.ts';
import type { PlanningContext } from '../context.ts';
import { finding, grouped, namesOf, onBoard, onPart, onRun, onSite, onStation } from './make.ts';

const CAUTIOUS = assumption('What is not known is judged on the cautious side');
const GUESSED = assumption('Guessed inputs widen the band');
const OUTLET = assumption('Outlet = room + 0.9 (set - room) unless measured, 25 °C uncertain');

/** How near a part must be for its guessed data to matter, mm. */
const NEAR_MM = 20;

function alloyFindings(context: PlanningContext): Finding[] {
  const unknown = context.board.parts.filter((part) => part.fitted && !alloyById(part.alloy));
  const sites = context.plan.sites.filter((site) => !alloyById(site.alloyOff) || !alloyById(site.alloyOn));
  const neighbour = meltingRange('unknown', 'neighbour');
  const target = meltingRange('unknown', 'target');
  const figures = {
    neighbourAlloy: neighbour.alloy.name,
    neighbourSolidusC: neighbour.solidusC,
    targetAlloy: target.alloy.name,
    targetLiquidusC: target.liquidusC,
  };
  const parts = unknown.length
    ? [
        finding(
          'alloys-unknown',
          'note',
          onBoard,
          { ...namesOf(unknown.map((part) => part.refdes)), ...figures },
          CAUTIOUS,
        ),
      ]
    : [];
  return [
    ...sites.map((site) =>
      finding('site-alloy-unknown', 'warn', onSite(site.id), { refdes: site.target, ...figures }, CAUTIOUS),
    ),
    ...parts,
  ];
}

/** Only guesses that bear on the result: parts near a rework area. */
function classFindings(context: PlanningContext): Finding[] {
  const near = context.evaluation.parts.flatMap((exposure) => {
    const part = context.parts.get(exposure.refdes);
    return part && exposure.clearanceMm <= NEAR_MM ? [{ refdes: part.refdes, part, exposure }] : [];
  });
  const unknown = near.filter(({ part }) => classById(part.class).id === 'unknown');
  const plastics = near.filter(({ part }) => classById(part.class).id === 'connector-unknown');
  const guessed = near.filter(({ part }) => part.classGuessed && classById(part.class).id !== 'unknown');
  const heights = near.filter(({ part }) => part.package.heightMm === null);
  const nearness = (entry: (typeof near)[number]): number => -entry.exposure.clearanceMm;
  const figures = () => ({ nearMm: NEAR_MM });
  return [
    ...grouped('classes-unknown', 'warn', unknown, nearness, figures, CAUTIOUS),
    ...grouped('plastics-unknown', 'warn', plastics, nearness, figures, CAUTIOUS),
    ...grouped('classes-guessed', 'note', guessed, nearness, figures, GUESSED),
    ...grouped('heights-unknown', 'note', heights, nearness, figures, GUESSED),
  ];
}

function boardFindings(context: PlanningContext): Finding[] {
  const { evaluation, board, plan } = context;
  const offBoard = evaluation.notEvaluated.filter((entry) => entry.reason === 'off-board');
  const all: Finding[] = [
    ...grouped(
      'parts-off-board',
      'warn',
      offBoard,
      () => 0,
      () => ({}),
      null,
    ),
  ];
  if (evaluation.grid.grownFromMm !== null) {
    const figures = { fromMm: evaluation.grid.grownFromMm, cellMm: evaluation.grid.cellMm };
    all.push(finding('grid-grown', 'note', onBoard, figures, assumption('At most 400,000 cells')));
  }
  if (!board.laminate.layersKnown) {
    const figures = { layers: board.laminate.layers.length };
    all.push(finding('laminate-guessed', 'warn', onBoard, figures, GUESSED));
  }
  if (!outletIsKnown(plan.station)) all.push(finding('outlet-not-measured', 'note', onStation, {}, OUTLET));
  if (evaluation.bands === 'not-computed') all.push(finding('bands-not-computed', 'note', onBoard, {}, null));
  return all;
}

/** Notices of the evaluation that planning says in its own words above and in findings/plan.ts. */
const SAID_HERE: ReadonlySet<string> = new Set(['outlet-from-setting', 'grid-grown', 'iron-not-modelled']);
const JET_LAW = found('Martin 1977, average coefficient of a single round jet, and its range', 'H');

const LATENT_HEAT = found('2257 kJ/kg to boil water off at 100 °C (steam tables); no drying below 100 °C counted', 'H');

const SOURCES: Readonly<Record<string, Source>> = {
  ...{ 'gel-dries': LATENT_HEAT, 'gel-lasts': LATENT_HEAT },
  'hood-film-assumed': assumption('Film inside a hood, 100 W/m²K at 30 L/min: no law holds there'),
  'emitter-assumed': assumption('A grey emitter at the temperature of its setting'),
};

const partOf = ({ figures }: EvaluationNotice) => (typeof figures.refdes === 'string' ? onPart(figures.refdes) : null);

/** The evaluation's other notices: a law outside its range, a watch point beside the board. */
function noticeFindings({ evaluation, plan }: PlanningContext): Finding[] {
  return evaluation.notices
    .filter((notice) => !SAID_HERE.has(notice.code))
    .map((notice): Finding => {
      const run = plan.heatRuns.find((candidate) => candidate.name === notice.place);
      const jet = notice.code.startsWith('reynolds') || notice.code.startsWith('stand-off');
      return {
        code: notice.code,
        weight: notice.code === 'watch-point-off-board' || notice.code === 'gel-dries' ? 'warn' : 'note',
        place: partOf(notice) ?? (run ? onRun(run.id) : onStation),
        figures: { ...notice.figures, place: notice.place ?? plan.station.name },
        source: jet ? JET_LAW : (SOURCES[notice.code] ?? null),
      };
    });
}

/** What is not known about board and station, and what stands in its place. */
export const inputFindings = (context: PlanningContext): Finding[] => [
  ...noticeFindings(context),
  ...alloyFindings(context),
  ...classFindings(context),
  ...boardFindings(context),
];
