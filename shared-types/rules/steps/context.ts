import type { Board, Cover, Part } from '../../board.ts';
import type { Assessment, PartExposure } from '../../evaluation.ts';
import { gapBetween, insidePolygon, rectangleCorners } from '../../geometry.ts';
import { classById } from '../../library/classes.ts';
import type { HeatRun, Plan, Site } from '../../plan.ts';
import type { Tag, TagKind, TagOf } from '../../tags.ts';
import type { CautionId } from '../../words/cautions.ts';
import type { Figures } from '../../words/figures.ts';
import { afterPhase, runPhase, type StepDraft, type StepKind } from './types.ts';

/** Board, plan and what is known of the heat, with the look-ups that the rules of the steps need. */
export type StepContext = {
  board: Board;
  plan: Plan;
  /** null: the figures are not worked out yet; steps then carry none. */
  assessment: Assessment | null;
  parts: ReadonlyMap<string, Part>;
  exposures: ReadonlyMap<string, PartExposure>;
  /** Heat runs in the order of work. */
  runs: readonly HeatRun[];
  /** Cans, frames and stiffeners that come off, with where. */
  covers: ReadonlyMap<string, CoverOff>;
};

/** How a cover comes off: by hand before heat, in the heat run of that id, or in a run that the plan lacks. */
export type CoverOff = { cover: Cover; tag: TagOf<'remove'> | null; by: 'hand' | 'lacking' | { runId: string } };

const cornersOf = (cover: Cover) =>
  rectangleCorners({ x: cover.x, y: cover.y, lengthMm: cover.lengthMm, widthMm: cover.widthMm, turnDeg: cover.turn });

export const tagsOfKind = <K extends TagKind>(plan: Plan, kind: K): TagOf<K>[] =>
  plan.tags.filter((tag): tag is TagOf<K> => tag.kind === kind);

/** Sites that a cover stands over: a can or frame on the same side, touching the rework area. */
const sitesUnder = (cover: Cover, plan: Plan): Site[] =>
  cover.kind === 'stiffener'
    ? []
    : plan.sites.filter(
        (site) => site.side === cover.side && gapBetween(cornersOf(cover), rectangleCorners(site.area)) === 0,
      );

/** Parts that a tag takes off or moves, and that stand under a cover. */
const tagWorkUnder = (cover: Cover, board: Board, plan: Plan): boolean =>
  cover.kind !== 'stiffener' &&
  plan.tags.some((tag) => {
    const worked =
      tag.kind === 'remove' || tag.kind === 'relocate' || (tag.kind === 'reprogram' && tag.way === 'off-and-back');
    const ends = worked ? [tag.refdes, tag.kind === 'relocate' ? tag.toRefdes : ''] : [];
    return board.parts.some(
      (part) => ends.includes(part.refdes) && part.side === cover.side && insidePolygon(part, cornersOf(cover)),
    );
  });

function coversOff(board: Board, plan: Plan): Map<string, CoverOff> {
  const removals = tagsOfKind(plan, 'remove');
  const found = new Map<string, CoverOff>();
  for (const cover of board.covers) {
    const tag = removals.find(({ refdes }) => refdes === cover.id) ?? null;
    const under = new Set(sitesUnder(cover, plan).map(({ id }) => id));
    if (!tag && under.size === 0 && !tagWorkUnder(cover, board, plan)) continue;
    const runs = plan.heatRuns.filter((run) => run.kind === 'cover-removal');
    const run =
      runs.find(({ siteIds }) => siteIds.some((id) => under.has(id))) ??
      (tag || under.size === 0 ? runs[0] : undefined);
    const by = cover.fixing !== 'soldered' ? 'hand' : run ? { runId: run.id } : 'lacking';
    found.set(cover.id, { cover, tag, by });
  }
  return found;
}

/** Kinds of heat runs as they follow each other at one site. */
const RUN_RANK: Record<HeatRun['kind'], number> = {
  'cover-removal': 0,
  removal: 1,
  'site-preparation': 2,
  installation: 3,
};

/** Runs that share a site and are each of another kind go by kind, all others as the plan has them. */
export function runPairs(plan: Plan): { earlier: HeatRun; later: HeatRun }[] {
  return plan.sites.flatMap((site) => {
    const at = plan.heatRuns.filter(({ siteIds }) => siteIds.includes(site.id));
    const repeated = new Set(at.map(({ kind }) => kind)).size < at.length;
    const ordered = repeated ? at : at.toSorted((a, b) => RUN_RANK[a.kind] - RUN_RANK[b.kind]);
    return ordered.slice(1).map((later, index) => ({ earlier: ordered[index], later }));
  });
}

/** The plan's order, changed as little as the pairs ask for. A ring of them stays as the plan has it. */
function orderedRuns(plan: Plan): HeatRun[] {
  const pairs = runPairs(plan);
  const open = [...plan.heatRuns];
  const ordered: HeatRun[] = [];
  while (open.length > 0) {
    const free = open.findIndex((run) => !pairs.some(({ earlier, later }) => later === run && open.includes(earlier)));
    ordered.push(...open.splice(Math.max(0, free), 1));
  }
  return ordered;
}

export function stepContext(board: Board, plan: Plan, assessment: Assessment | null): StepContext {
  return {
    board,
    plan,
    assessment,
    parts: new Map(board.parts.map((part) => [part.refdes, part])),
    exposures: new Map(assessment?.evaluation.parts.map((exposure) => [exposure.refdes, exposure]) ?? []),
    runs: orderedRuns(plan),
    covers: coversOff(board, plan),
  };
}

/** The can over a part, among those that come off. */
export function coverOver(context: StepContext, refdes: string): CoverOff | null {
  const part = context.parts.get(refdes);
  if (!part) return null;
  for (const off of context.covers.values()) {
    const { cover } = off;
    if (cover.kind === 'stiffener' || cover.side !== part.side || cover.id === refdes) continue;
    if (insidePolygon(part, cornersOf(cover))) return off;
    const site = context.plan.sites.find(({ target }) => target === refdes);
    if (site && gapBetween(cornersOf(cover), rectangleCorners(site.area)) === 0) return off;
  }
  return null;
}

/** Where work before heat on a part stands: before all heat, or behind the run that takes its can off. */
export function phaseBeforeHeat(context: StepContext, refdes: string): string {
  const off = coverOver(context, refdes);
  if (!off || off.by === 'hand') return 'before-heat';
  return off.by === 'lacking' ? 'covers' : afterPhase(off.by.runId);
}

/** The first run of a kind at a site, in the order of work. */
export const runAt = (context: StepContext, siteId: string, kind: HeatRun['kind']): HeatRun | undefined =>
  context.runs.find((run) => run.kind === kind && run.siteIds.includes(siteId));

export const lastRun = (context: StepContext): HeatRun | undefined => context.runs.at(-1);
/** Behind the last heat run everything is 'afterwards'. */
export const phaseAfter = (context: StepContext, run: HeatRun): string =>
  run === lastRun(context) ? 'afterwards' : afterPhase(run.id);
export const phaseOf = (run: HeatRun): string => runPhase(run.id);

const CELLS: ReadonlySet<string> = new Set(['coin-cell', 'lithium-cell', 'battery']);
export const isCell = (part: Part | undefined): boolean => part !== undefined && CELLS.has(classById(part.class).id);
/** Classes whose content is read out before their joints melt. */
const DATA: ReadonlySet<string> = new Set(['flash-memory', 'serial-memory']);
export const holdsData = (part: Part | undefined): boolean => part !== undefined && DATA.has(classById(part.class).id);
/** What a technician reads of a part: its value, else its package. */
/** What an iron or hot air at a part calls for; a cell has cautions of its own, a module on a connector is pulled. */
export const ironCautions = (part: Part | undefined): CautionId[] =>
  isCell(part) || part?.class === 'module-on-connector' ? [] : ['burns', 'fumes'];

export const partName = (part: Part | undefined): string => part?.value || part?.package.name || '';

/** Figures of the first finding of a code, about a site where one is named. */
export const foundFigures = ({ assessment }: StepContext, code: string, siteId?: string) =>
  assessment?.findings.find((found) => found.code === code && (siteId === undefined || found.place.id === siteId));

type Optional = Partial<Omit<StepDraft, 'id' | 'kind' | 'phase' | 'figures'>>;
/** A step without readings, cautions or alert unless given. `about`: what makes its id, behind its kind. */
export function draft(
  kind: StepKind,
  about: string,
  phase: string,
  figures: Figures = {},
  more: Optional = {},
): StepDraft {
  return {
    id: about ? `${kind}:${about}` : kind,
    kind,
    phase,
    parts: [],
    figures,
    expects: [],
    source: null,
    cautions: [],
    alert: null,
    tagOrder: null,
    tagId: null,
    rank: 0,
    ...more,
  };
}
export const fromTag = (tag: Tag): Pick<StepDraft, 'tagOrder' | 'tagId'> => ({ tagOrder: tag.order, tagId: tag.id });
