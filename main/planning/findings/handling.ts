import type { Finding } from '../../../shared-types/evaluation.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import { heightOf } from '../../../shared-types/library/limits.ts';
import { bakeOf, FLOOR_LIFE_SOURCE, floorLifeH, type MoistureLevel } from '../../../shared-types/library/moisture.ts';
import type { Site } from '../../../shared-types/plan.ts';
import type { Figures } from '../../../shared-types/words/figures.ts';
import type { PlanningContext } from '../context.ts';
import { commonPractice, MOST_EXCHANGES } from '../published.ts';
import { finding, namesOf, onBoard, onPart, onSite } from './make.ts';

/** A floor life that ended longer ago than this asks for the longer bake, h (J-STD-033, user bake table). */
const LONG_OVER_H = 72;

/** How often parts were exchanged at a place: the pads and the laminate under it count every heat run. */
function exchangeFindings(site: Site): Finding[] {
  const before = site.exchangedBefore;
  if (before === null || before === 0) return [];
  const most = MOST_EXCHANGES.value;
  const figures = { refdes: site.target, number: before + 1, most };
  if (before >= most) return [finding('exchanged-too-often', 'stop', onSite(site.id), figures, MOST_EXCHANGES.source)];
  return [finding('exchanged-before', 'note', onSite(site.id), figures, MOST_EXCHANGES.source)];
}

/** Hours of the bake that the part going on needs, as figures; 0 where the standard's table says nothing. */
function bakeFigures(context: PlanningContext, site: Site, level: MoistureLevel, longOver: boolean): Figures {
  const part = context.parts.get(site.target);
  const body = {
    thicknessMm: site.incoming.thicknessMm ?? (part ? heightOf(part) : 0),
    lengthMm: part?.package.lengthMm ?? 0,
    widthMm: part?.package.widthMm ?? 0,
    array: part ? classById(part.class).arrayPart : false,
  };
  const bake = part ? bakeOf(level, body, longOver) : null;
  return {
    refdes: site.target,
    level,
    thicknessMm: body.thicknessMm,
    at125H: bake?.at125H ?? 0,
    at90H: bake?.at90H ?? 0,
    at40H: bake?.at40H ?? 0,
    source: bake?.source.text ?? '',
  };
}

/** Moisture in the part that goes on: it cracks when water in it boils at reflow. */
function moistureFindings(context: PlanningContext, site: Site): Finding[] {
  const { moistureLevel: level, openH } = site.incoming;
  const goesOn = context.plan.heatRuns.some((run) => run.kind === 'installation' && run.siteIds.includes(site.id));
  if (!goesOn || level === 'unknown') return [];
  const lifeH = floorLifeH(level);
  if (lifeH === null) return [];
  const place = onSite(site.id);
  if (level === '6')
    return [finding('bake-before-every-use', 'warn', place, { refdes: site.target }, FLOOR_LIFE_SOURCE)];
  if (openH === null) {
    const figures = { ...bakeFigures(context, site, level, true), lifeH };
    return [finding('floor-life-unknown', 'warn', place, figures, FLOOR_LIFE_SOURCE)];
  }
  if (openH <= lifeH) return [];
  const figures = { ...bakeFigures(context, site, level, openH - lifeH > LONG_OVER_H), lifeH, openH };
  return [finding('floor-life-over', 'stop', place, figures, FLOOR_LIFE_SOURCE)];
}

/** One line for all sites whose history or moisture nobody has told. */
function untold(context: PlanningContext): Finding[] {
  const installed = (site: Site) =>
    context.plan.heatRuns.some((run) => run.kind === 'installation' && run.siteIds.includes(site.id));
  const named = (sites: readonly Site[]) => namesOf(sites.map((site) => site.target));
  const level = context.plan.sites.filter((site) => site.incoming.moistureLevel === 'unknown' && installed(site));
  const history = context.plan.sites.filter((site) => site.exchangedBefore === null);
  return [
    ...(level.length
      ? [finding('moisture-level-untold', 'note', onSite(level[0].id), named(level), FLOOR_LIFE_SOURCE)]
      : []),
    ...(history.length
      ? [finding('history-untold', 'note', onSite(history[0].id), named(history), MOST_EXCHANGES.source)]
      : []),
  ];
}

/** A memory that can be written where it sits needs no heat at all. */
function firmwareFindings(context: PlanningContext): Finding[] {
  const source = commonPractice('firmware is written in circuit where the board allows it');
  const lifted = new Set([
    ...context.plan.tags.flatMap((tag) => (tag.kind === 'reprogram' && tag.way === 'off-and-back' ? [tag.refdes] : [])),
    ...context.plan.sites.flatMap(({ target }) =>
      classById(context.parts.get(target)?.class ?? 'unknown').id === 'serial-memory' ? [target] : [],
    ),
  ]);
  return [...lifted].map((refdes) => finding('in-circuit-first', 'warn', onPart(refdes), { refdes }, source));
}

/** What the history of the place, the parts that go on and data in them ask for before any heat. */
export const handlingFindings = (context: PlanningContext): Finding[] => [
  ...context.plan.sites.flatMap((site) => [...exchangeFindings(site), ...moistureFindings(context, site)]),
  ...untold(context),
  ...firmwareFindings(context),
];

/** Findings that no profile, shield or order of work mends. */
const BEYOND_MENDING = ['neighbour-cannot-be-saved', 'exchanged-too-often'] as const;

/** The whole in one line: when something stops the work that nothing in the plan can mend. */
export function verdictFindings(found: readonly Finding[]): Finding[] {
  const beyond = found.filter(({ code }) => (BEYOND_MENDING as readonly string[]).includes(code));
  if (beyond.length === 0) return [];
  const partsOf = (code: (typeof BEYOND_MENDING)[number]) =>
    beyond.filter((one) => one.code === code).map((one) => String(one.figures.refdes));
  const [lost, worn] = BEYOND_MENDING.map(partsOf);
  const figures = { lost: lost.join(', '), lostCount: lost.length, worn: worn.join(', '), wornCount: worn.length };
  const source = commonPractice('work that cannot end well is declined, or quoted with what it will cost');
  return [finding('decline-or-quote', 'stop', onBoard, figures, source)];
}
