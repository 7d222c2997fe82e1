import type { Finding, PartAction } from '../../../shared-types/evaluation.ts';
import type { Figures } from '../../../shared-types/words/figures.ts';
import { type Exposed, exposedNeighbours, type PlanningContext } from '../context.ts';
import { bodyJudgement, holdsData, isLarge } from '../judgement.ts';
import {
  ARRAY_CRACK_C,
  commonPractice,
  DROP_OFF_G_PER_IN2,
  ELECTROLYTIC_NEAR_MM,
  HAND_REPEAT_K,
  KEEP_OUT_MM,
  MOST_REFLOWS,
  PORT_NEAR_MM,
  UNDERFILL_BELOW_SOLIDUS_K,
} from '../published.ts';
import { finding, grouped, onPart } from './make.ts';

type Entry = Exposed & { refdes: string; action: PartAction | undefined };

const STAYS: ReadonlySet<PartAction['action']> = new Set(['leave', 'leave-will-reflow', 'shield', 'secure']);
const staysOn = ({ action }: Entry): boolean => action !== undefined && STAYS.has(action.action);

function actionFindings(actions: readonly PartAction[]): Finding[] {
  const open = actions.filter((action) => !action.done);
  const cells = open.filter((action) => action.reason === 'always-off');
  const lost = open.filter((action) => action.action === 'cannot-be-saved');
  const over = open.filter(
    (action) => (action.action === 'remove-first' || action.action === 'shield') && action.reason !== 'always-off',
  );
  const limit = commonPractice('cells, batteries, modules on connectors and plastic optics come off before any heat');
  const advice = commonPractice('neighbours beyond a limit are shielded or come off first');
  return [
    ...grouped(
      'always-off-still-on',
      'stop',
      cells,
      () => 0,
      () => ({}),
      limit,
    ),
    ...lost.map((action) =>
      finding(
        'neighbour-cannot-be-saved',
        'stop',
        onPart(action.refdes),
        { refdes: action.refdes },
        UNDERFILL_BELOW_SOLIDUS_K.source,
      ),
    ),
    ...grouped(
      'neighbours-need-action',
      'warn',
      over,
      (action) => -Number(action.figures.marginK ?? 0),
      () => ({}),
      advice,
    ),
  ];
}

function dropFindings(actions: readonly PartAction[]): Finding[] {
  return actions
    .filter((action) => action.action === 'secure')
    .map((action) =>
      finding(
        action.done ? 'drop-off-held' : 'drop-off',
        action.done ? 'note' : 'warn',
        onPart(action.refdes),
        { ...action.figures, refdes: action.refdes },
        DROP_OFF_G_PER_IN2.source,
      ),
    );
}

/** Reflows behind a part when it comes to the bench: one a side of the board that carries parts. */
function assemblyReflows(context: PlanningContext): number {
  return new Set(context.board.parts.filter((part) => part.fitted).map((part) => part.side)).size || 1;
}

function reflowFindings(context: PlanningContext, entries: readonly Entry[]): Finding[] {
  const before = assemblyReflows(context);
  const many = entries.filter((entry) => staysOn(entry) && before + entry.exposure.reflows > MOST_REFLOWS.value);
  const count = (entry: Entry): number => entry.exposure.reflows;
  const figures = (worst: Entry): Figures => ({
    before,
    reflows: worst.exposure.reflows,
    most: MOST_REFLOWS.value,
  });
  const small = many.filter((entry) => entry.partClass.smallPart);
  const large = many.filter((entry) => !entry.partClass.smallPart);
  return [
    ...grouped('reflow-count', 'warn', large, count, figures, MOST_REFLOWS.source),
    ...grouped('reflow-count-small', 'note', small, count, figures, MOST_REFLOWS.source),
  ];
}

function moltenFindings(entries: readonly Entry[]): Finding[] {
  const molten = entries.filter((entry) => staysOn(entry) && entry.exposure.reflow !== 'none');
  const large = molten.filter((entry) => isLarge(entry.part, entry.partClass) && entry.action?.action !== 'secure');
  const flash = molten.filter((entry) => holdsData(entry.partClass.id));
  const coated = molten.filter((entry) => entry.part.coated);
  const peak = (entry: Entry): number => entry.exposure.joint.maxC;
  const figures = (worst: Entry): Figures => ({ jointC: peak(worst) });
  const still = commonPractice('a board with molten joints is not moved');
  const data = commonPractice('data is read out before its memory is reflowed');
  const coating = commonPractice('coating comes off joints that melt');
  return [
    ...grouped('large-parts-reflow', 'warn', large, peak, figures, still),
    ...grouped('data-at-risk', 'warn', flash, peak, figures, data),
    ...grouped('coated-joints-melt', 'warn', coated, peak, figures, coating),
  ];
}

/** Arrays that stay and get hotter than those that were found cracked; measured in the middle and at the corners. */
function crackFindings(entries: readonly Entry[]): Finding[] {
  const { centre, corner, source } = ARRAY_CRACK_C;
  const hot = entries.filter(
    (entry) =>
      staysOn(entry) &&
      entry.partClass.arrayPart &&
      (entry.exposure.body.meanC > centre || entry.exposure.joint.maxC > corner),
  );
  const figures = (worst: Entry): Figures => ({
    meanC: worst.exposure.body.meanC,
    cornerC: worst.exposure.joint.maxC,
    centreLimitC: centre,
    cornerLimitC: corner,
  });
  return grouped('array-may-crack', 'warn', hot, (entry) => entry.exposure.joint.maxC, figures, source);
}

/** Large, solid, yet beyond the preset for neighbours' joints. */
function presetFindings(entries: readonly Entry[]): Finding[] {
  const warm = entries.filter(
    (entry) =>
      staysOn(entry) &&
      entry.exposure.reflow === 'none' &&
      isLarge(entry.part, entry.partClass) &&
      (entry.exposure.margins.joint ?? 0) < 0,
  );
  const figures = (worst: Entry): Figures => ({
    jointC: worst.exposure.joint.maxC,
    limitC: worst.exposure.limits.joint?.celsius ?? worst.exposure.solidusC,
  });
  const worst = (entry: Entry): number => -(entry.exposure.margins.joint ?? 0);
  const source = warm[0]?.exposure.limits.joint?.source ?? null;
  return grouped('joints-over-preset', 'note', warm, worst, figures, source);
}

/** Parts that stay, close below a limit of body or skin, while no band says how sure that is. */
function slimFindings(context: PlanningContext, entries: readonly Entry[]): Finding[] {
  if (context.evaluation.bands === 'computed') return [];
  const slim = entries.flatMap((entry) => {
    const marginK = bodyJudgement(entry.exposure)?.marginK ?? Number.POSITIVE_INFINITY;
    return staysOn(entry) && marginK >= 0 && marginK < HAND_REPEAT_K.value ? [{ refdes: entry.refdes, marginK }] : [];
  });
  const figures = (worst: { marginK: number }): Figures => ({ marginK: worst.marginK, repeatK: HAND_REPEAT_K.value });
  return grouped('margins-slim', 'warn', slim, (entry) => -entry.marginK, figures, HAND_REPEAT_K.source);
}

function nearFindings(context: PlanningContext, entries: readonly Entry[]): Finding[] {
  const worked = new Set(context.plan.heatRuns.map((run) => run.side));
  const facing = entries.filter((entry) => staysOn(entry) && worked.has(entry.part.side));
  const gap = (entry: Entry): number => entry.exposure.clearanceMm;
  const near = (mm: number, ids: (id: string) => boolean): Entry[] =>
    facing.filter((entry) => ids(entry.partClass.id) && gap(entry) <= mm);
  const figures = (worst: Entry): Figures => ({ clearanceMm: gap(worst), bodyC: worst.exposure.body.maxC });
  const tight = facing.filter((entry) => gap(entry) < KEEP_OUT_MM.value);
  return [
    ...grouped(
      'electrolytic-close',
      'warn',
      near(ELECTROLYTIC_NEAR_MM.value, (id) => id.startsWith('electrolytic')),
      (entry) => -gap(entry),
      figures,
      ELECTROLYTIC_NEAR_MM.source,
    ),
    ...grouped(
      'port-close',
      'warn',
      near(PORT_NEAR_MM.value, (id) => id === 'mems-microphone'),
      (entry) => -gap(entry),
      figures,
      PORT_NEAR_MM.source,
    ),
    ...grouped(
      'within-keep-out',
      'note',
      tight,
      (entry) => -gap(entry),
      (worst) => ({ ...figures(worst), keepOutMm: KEEP_OUT_MM.value }),
      KEEP_OUT_MM.source,
    ),
  ];
}

/** What the heat does to the parts that stay, and what is advised but not yet done. */
export function neighbourFindings(context: PlanningContext, actions: readonly PartAction[]): Finding[] {
  const byPart = new Map(actions.map((action) => [action.refdes, action]));
  const entries = exposedNeighbours(context).map(
    (exposed): Entry => ({
      ...exposed,
      refdes: exposed.part.refdes,
      action: byPart.get(exposed.part.refdes),
    }),
  );
  return [
    ...actionFindings(actions),
    ...dropFindings(actions),
    ...reflowFindings(context, entries),
    ...moltenFindings(entries),
    ...crackFindings(entries),
    ...presetFindings(entries),
    ...slimFindings(context, entries),
    ...nearFindings(context, entries),
  ];
}
