import { classById } from '../../library/classes.ts';
import type { Source } from '../../library/library-types.ts';
import { found } from '../../library/sources.ts';
import type { CautionId } from '../../words/cautions.ts';
import { designatorRanges, naturalOrder } from '../designators.ts';
import { coatedAtWork, names, partsOff } from './before-heat.ts';
import {
  draft,
  ironCautions,
  isCell,
  partName,
  phaseBeforeHeat,
  phaseOf,
  type StepContext,
  tagsOfKind,
} from './context.ts';
import { strapSteps } from './strap-steps.ts';
import type { Expected, StepDraft } from './types.ts';

const CERAMIC = found('Panasonic 151S-ECJ-SS018E: dismounted ceramic capacitors shall not be used again');
const LED = found('Luxpia LRH1035: no repair after an LED has been soldered, no reuse');
const GEL = found('SMT Magazine, April 2015: gels are cleaned off with alcohol and brush, cleanliness proven', 'M');

/** Why a part that came off may not go back, with the source; null: it may. */
function freshBecause(classId: string): { why: 'ceramic' | 'led' | 'one-reflow'; source: Source } | null {
  const partClass = classById(classId);
  if (partClass.id === 'chip-capacitor') return { why: 'ceramic', source: CERAMIC };
  if (partClass.id === 'led') return { why: 'led', source: LED };
  if (!partClass.oneReflow) return null;
  const limits = [partClass.bodyLimit, partClass.skinLimit].flatMap((one) => (one && one !== 'by-volume' ? [one] : []));
  return { why: 'one-reflow', source: limits[0]?.source ?? partClass.source };
}

/** Parts that go back in their steps: cells wait for power-on, everything else comes while the board is cold. */
function backSteps(context: StepContext): StepDraft[] {
  const off = partsOff(context);
  return off.flatMap(({ refdes, tag }, index) => {
    if (tag && !tag.goesBack) return [];
    const part = context.parts.get(refdes);
    const cell = isCell(part);
    const fresh = cell || !part ? null : freshBecause(part.class);
    const figures = { refdes, name: partName(part), slot: tag?.traySlot ?? '', fresh: fresh?.why ?? '' };
    return [
      draft(cell ? 'cell-back' : 'back', refdes, cell ? 'power-on' : 'afterwards', figures, {
        parts: [refdes],
        source: fresh?.source ?? null,
        cautions: cell ? ['cells'] : ironCautions(part),
        // In reverse: what came off last goes back first.
        rank: -index,
        tagId: tag?.id ?? null,
      }),
    ];
  });
}

/** Cans, frames and stiffeners that go back: without a tag that says otherwise they do. */
function coverBackSteps({ covers }: StepContext): StepDraft[] {
  return [...covers.values()].flatMap(({ cover, tag }) => {
    if (tag && !tag.goesBack) return [];
    const figures = { cover: cover.id, kind: cover.kind, fixing: cover.fixing };
    const cautions: CautionId[] = cover.fixing === 'soldered' ? ['burns', 'fumes'] : [];
    const more = { parts: [cover.id], tagId: tag?.id ?? null, cautions };
    return [draft('cover-back', cover.id, 'afterwards', figures, more)];
  });
}

/** Parts and covers in the tray: how many come off and go back. The plan's tags, and what comes off without one. */
export function trayCounts(context: StepContext): { off: number; back: number } {
  const parts = partsOff(context).map(({ tag }) => tag?.goesBack ?? true);
  const covers = [...context.covers.values()].map(({ tag }) => tag?.goesBack ?? true);
  const all = [...parts, ...covers];
  return { off: all.length, back: all.filter(Boolean).length };
}

/** Counted when the last of them is off: before heat, or behind the run that takes the last can away. */
function countSteps(context: StepContext): StepDraft[] {
  const { off, back } = trayCounts(context);
  if (off === 0) return [];
  const phases = new Set([
    ...partsOff(context).map(({ refdes }) => phaseBeforeHeat(context, refdes)),
    ...[...context.covers.values()].map(({ by }) => {
      const run = typeof by === 'object' ? context.runs.find(({ id }) => id === by.runId) : undefined;
      return run ? phaseOf(run) : by === 'hand' ? 'before-heat' : 'covers';
    }),
  ]);
  const last = lastOf(context, phases);
  // Cells wait for power-on: they are still in the tray when the rest is counted back.
  const cells = partsOff(context).flatMap(({ refdes, tag }) =>
    isCell(context.parts.get(refdes)) && (tag?.goesBack ?? true) ? [refdes] : [],
  );
  const backCold = back - cells.length;
  const parts = [...partsOff(context).map(({ refdes }) => refdes), ...context.covers.keys()];
  const counted = (which: 'off' | 'back', predicted: number): Expected[] => [
    { key: which, name: which, of: '', unit: 'count', predicted, exact: true },
  ];
  return [
    draft('count-off', '', last, { off, back }, { parts, expects: counted('off', off) }),
    ...(backCold > 0
      ? [
          draft(
            'count-back',
            '',
            'afterwards',
            { back: backCold, cells: cells.join(', ') },
            { parts, expects: counted('back', backCold) },
          ),
        ]
      : []),
  ];
}

/** The last of some phases before and between the heat runs. */
function lastOf(context: StepContext, phases: ReadonlySet<string>): string {
  const order = ['before-heat', 'covers', ...context.runs.flatMap(({ id }) => [`run:${id}`, `after:${id}`])];
  return order.findLast((phase) => phases.has(phase)) ?? 'before-heat';
}

function inspectSteps(context: StepContext): StepDraft[] {
  const { assessment, plan } = context;
  const installed = plan.sites.filter(({ id }) =>
    plan.heatRuns.some(({ kind, siteIds }) => kind === 'installation' && siteIds.includes(id)),
  );
  const targets = [...new Set(installed.map(({ target }) => target))];
  const left = new Set(
    (assessment?.actions ?? []).filter(({ action }) => action === 'leave-will-reflow').map(({ refdes }) => refdes),
  );
  const melted = (assessment?.evaluation.parts ?? []).filter(
    ({ refdes, reflow }) => reflow !== 'none' && !targets.includes(refdes),
  );
  const reflowed = melted.map(({ refdes }) => refdes);
  for (const refdes of left) if (!reflowed.includes(refdes)) reflowed.push(refdes);
  const array = targets.some((refdes) => classById(context.parts.get(refdes)?.class ?? 'unknown').arrayPart);
  return [
    ...(targets.length > 0
      ? [draft('inspect-joints', '', 'afterwards', { ...names(targets), array: Number(array) }, { parts: targets })]
      : []),
    ...(reflowed.length > 0
      ? [
          draft(
            'inspect-reflowed',
            '',
            'afterwards',
            { count: reflowed.length, names: designatorRanges(reflowed.toSorted(naturalOrder)) },
            { parts: reflowed },
          ),
        ]
      : []),
  ];
}

function shieldsOff({ plan }: StepContext): StepDraft[] {
  const shields = tagsOfKind(plan, 'shield');
  const fenced = plan.sites.filter(({ fence }) => fence !== null).map(({ target }) => target);
  const refdes = [...new Set([...shields.map((tag) => tag.refdes), ...fenced])];
  if (refdes.length === 0) return [];
  const gel = shields.some(({ shield }) => shield === 'gel');
  const figures = { ...names(refdes), fence: Number(fenced.length > 0), gel: Number(gel) };
  return [
    draft('shields-off', '', 'afterwards', figures, { parts: refdes, source: gel ? GEL : null, cautions: ['burns'] }),
  ];
}

/** When the board is cold: shields off, joints looked at, parts back and counted, cleaned; coated again once it works. */
export function afterwardsSteps(context: StepContext): StepDraft[] {
  const coated = coatedAtWork(context).map(({ refdes }) => refdes);
  const solders =
    context.runs.length > 0 ||
    context.plan.tags.some(
      (tag) => tag.kind === 'remove' || (tag.kind === 'reprogram' && tag.way === 'off-and-back'),
    ) ||
    strapSteps(context).length > 0;
  return [
    ...shieldsOff(context),
    ...inspectSteps(context),
    ...backSteps(context),
    ...coverBackSteps(context),
    ...countSteps(context),
    ...(solders ? [draft('clean', '', 'afterwards', {}, { cautions: ['fumes'] })] : []),
    ...(coated.length > 0
      ? [draft('coat-again', '', 'hand-back', names(coated), { parts: coated, cautions: ['coated'] })]
      : []),
  ];
}
