import { bodyOf } from '../../board.ts';
import { gapBetween, rectangleCorners } from '../../geometry.ts';
import type { StepMark } from '../../steps.ts';
import { planStraps, type StrapMove } from '../straps/plan-straps.ts';
import { draft, fromTag, type StepContext, tagsOfKind } from './context.ts';
import type { StepDraft } from './types.ts';

/** Nearer to a rework area than this a fresh joint is within the nozzle's reach: the hands' room round it, our assumption. */
const NEAR_MM = 10;

/** A position that the heat of the plan melts, or that lies where the nozzle blows. */
function nearHeat(context: StepContext, refdes: string): boolean {
  const part = context.parts.get(refdes);
  if (!part) return false;
  if ((context.exposures.get(refdes)?.reflow ?? 'none') !== 'none') return true;
  const corners = rectangleCorners(bodyOf(part));
  return context.plan.sites.some((site) => gapBetween(corners, rectangleCorners(site.area)) < NEAR_MM);
}

/** Moves near the heat wait for the last run; others too, unless the plan's order puts them before the exchange. */
function phaseOfMove(
  context: StepContext,
  refdes: readonly string[],
  order: number | null,
): { near: boolean; phase: string } {
  const near = refdes.some((one) => nearHeat(context, one));
  const first = Math.min(Infinity, ...tagsOfKind(context.plan, 'replace').map((tag) => tag.order ?? Infinity));
  const early = !near && order !== null && order < first;
  return { near, phase: early ? 'before-heat' : 'afterwards' };
}

const STRAP_ID = /^move-strap:([^>]*)>([^>]*)$/;
/** Where a strap step moves a part from and to; empty: the stock, or nowhere. */
export function strapEnds(stepId: string): { from: string; to: string } | null {
  const match = STRAP_ID.exec(stepId);
  return match ? { from: match[1], to: match[2] } : null;
}
const moveId = ({ from, to }: Pick<StrapMove, 'from' | 'to'>): string => `${from ?? ''}>${to ?? ''}`;

/** Moves ticked off in the list of steps: the straps are read as fitted by now, so the planner no longer asks for them. */
function settledMoves({ plan }: StepContext, open: ReadonlySet<string>): StepMark[] {
  const ticked = new Set(plan.straps.ticked.map(({ refdes }) => refdes));
  return plan.steps.marks.filter((mark) => {
    const ends = strapEnds(mark.stepId);
    if (!mark.done || !ends || open.has(mark.stepId)) return false;
    return [ends.from, ends.to].every((one) => one === '' || ticked.has(one));
  });
}

/** Strap moves and relocations. A part that comes off by its own tag has its step there. */
export function strapSteps(context: StepContext): StepDraft[] {
  const { board, plan } = context;
  const removed = new Set(tagsOfKind(plan, 'remove').map(({ refdes }) => refdes));
  const relocations = tagsOfKind(plan, 'relocate');
  const moves = planStraps(board, plan).moves.filter(({ kind, from }) => !(kind === 'off' && removed.has(from ?? '')));
  const steps = moves.map((move, rank) => {
    const parts = [move.from, move.to].flatMap((one) => one ?? []);
    const tag = relocations.find(({ refdes }) => refdes === move.from && move.kind === 'relocate');
    const { near, phase } = phaseOfMove(context, parts, tag?.order ?? null);
    const figures = {
      move: move.kind,
      from: move.from ?? '',
      to: move.to ?? '',
      value: move.value,
      size: move.size,
      waits: Number(move.waits),
      near: Number(near),
    };
    return draft('move-strap', moveId(move), phase, figures, {
      parts,
      rank,
      cautions: ['burns'],
      ...(tag && fromTag(tag)),
    });
  });
  const known = new Set(steps.map(({ id }) => id));
  const settled = settledMoves(context, known).map((mark) => {
    const ends = strapEnds(mark.stepId) ?? { from: '', to: '' };
    const parts = [ends.from, ends.to].filter(Boolean);
    return draft('move-strap', moveId(ends), mark.phase, { settled: 1, words: mark.words, ...ends }, { parts });
  });
  return [...steps, ...settled, ...relocationSteps(context, [...steps, ...settled])];
}

/** Relocations that are no strap moves. */
function relocationSteps(context: StepContext, straps: readonly StepDraft[]): StepDraft[] {
  const moved = new Set(straps.map(({ figures }) => figures.from));
  const seen = new Set<string>();
  return tagsOfKind(context.plan, 'relocate').flatMap((tag) => {
    if (moved.has(tag.refdes) || seen.has(tag.refdes)) return [];
    seen.add(tag.refdes);
    const parts = [tag.refdes, tag.toRefdes].filter(Boolean);
    const { near, phase } = phaseOfMove(context, parts, tag.order);
    const figures = { refdes: tag.refdes, to: tag.toRefdes, note: tag.note, near: Number(near) };
    return [
      draft('relocate', tag.refdes, phase, figures, {
        parts,
        cautions: ['burns'],
        alert: tag.toRefdes ? null : 'warn',
        ...fromTag(tag),
      }),
    ];
  });
}
