import type { Finding } from '../../../shared-types/evaluation.ts';
import { shieldById } from '../../../shared-types/library/shields.ts';
import type { HeatRun, Plan } from '../../../shared-types/plan.ts';
import type { Tag, TagOf } from '../../../shared-types/tags.ts';
import type { PlanningContext } from '../context.ts';
import { commonPractice } from '../published.ts';
import { gasAt } from '../segments.ts';
import { finding, grouped, namesOf, onBoard, onPart, onRun, onSite } from './make.ts';

const bySite = (plan: Plan, siteId: string, kind?: HeatRun['kind']): HeatRun[] =>
  plan.heatRuns.filter((run) => run.siteIds.includes(siteId) && (!kind || run.kind === kind));

function siteRunFindings({ plan }: PlanningContext): Finding[] {
  if (plan.sites.length === 0) return [finding('no-site', 'stop', onBoard, {}, null)];
  if (plan.heatRuns.length === 0) return [finding('no-heat-run', 'stop', onBoard, {}, null)];
  return plan.sites.flatMap((site) => {
    const about = { refdes: site.target };
    if (bySite(plan, site.id).length === 0) return [finding('site-without-run', 'stop', onSite(site.id), about, null)];
    const lacking = (['removal', 'installation'] as const).filter((kind) => bySite(plan, site.id, kind).length === 0);
    return lacking.map((kind) => finding(`site-without-${kind}`, 'note', onSite(site.id), about, null));
  });
}

function runFindings({ plan }: PlanningContext): Finding[] {
  return plan.heatRuns.flatMap((run) => {
    const about = { runName: run.name };
    if (run.kind === 'site-preparation')
      return [
        finding(
          'iron-not-modelled',
          'note',
          onRun(run.id),
          about,
          commonPractice('the iron or desoldering tool heats pads locally'),
        ),
      ];
    if (run.siteIds.length === 0)
      return run.kind === 'cover-removal' ? [] : [finding('run-without-site', 'warn', onRun(run.id), about, null)];
    return run.siteIds
      .filter((siteId) => gasAt(run, siteId) === null)
      .map((siteId) => {
        const target = plan.sites.find((site) => site.id === siteId)?.target ?? siteId;
        return finding('run-without-gas', 'warn', onRun(run.id), { ...about, refdes: target }, null);
      });
  });
}

const removals = (plan: Plan): TagOf<'remove'>[] =>
  plan.tags.filter((tag): tag is TagOf<'remove'> => tag.kind === 'remove');

/** Values that stand more than once, with who has them. */
function repeated<T>(entries: readonly { value: T; refdes: string }[]): { value: T; refdes: string[] }[] {
  const groups = new Map<T, string[]>();
  for (const { value, refdes } of entries) groups.set(value, [...(groups.get(value) ?? []), refdes]);
  return [...groups].flatMap(([value, refdes]) => (refdes.length > 1 ? [{ value, refdes }] : []));
}

const nameOfTag = (tag: Tag): string => (tag.kind === 'watchPoint' ? tag.name : tag.refdes);

function traySlotFindings({ plan }: PlanningContext): Finding[] {
  const missing = removals(plan).filter((tag) => tag.traySlot.trim() === '');
  const used = removals(plan).flatMap((tag) =>
    tag.traySlot.trim() ? [{ value: tag.traySlot.trim().toUpperCase(), refdes: tag.refdes }] : [],
  );
  return [
    ...grouped(
      'tray-slot-missing',
      'warn',
      missing,
      () => 0,
      () => ({}),
      null,
    ),
    ...repeated(used).map(({ value, refdes }) =>
      finding('tray-slot-twice', 'warn', onPart(refdes[0]), { slot: value, ...namesOf(refdes) }, null),
    ),
  ];
}

function orderFindings({ plan }: PlanningContext): Finding[] {
  const ordered = plan.tags.flatMap((tag) =>
    tag.order === null ? [] : [{ value: tag.order, refdes: nameOfTag(tag) }],
  );
  return repeated(ordered).map(({ value, refdes }) =>
    finding('order-twice', 'warn', onBoard, { order: value, ...namesOf(refdes) }, null),
  );
}

/** A removal may also name a can, frame or stiffener. */
function knownNames({ board }: PlanningContext): Set<string> {
  return new Set([...board.parts.map((part) => part.refdes), ...board.covers.map((cover) => cover.id)]);
}

function tagPartFindings(context: PlanningContext): Finding[] {
  const known = knownNames(context);
  return context.plan.tags.flatMap((tag) => {
    if (tag.refdes === null) return [];
    const figures = { refdes: tag.refdes, tag: tag.kind };
    if (!known.has(tag.refdes)) return [finding('tag-on-unknown-part', 'warn', onPart(tag.refdes), figures, null)];
    const empty = context.parts.get(tag.refdes)?.fitted === false && tag.kind !== 'watchPoint';
    return empty ? [finding('tag-on-empty-position', 'warn', onPart(tag.refdes), figures, null)] : [];
  });
}

function contradictionFindings(context: PlanningContext): Finding[] {
  return [...context.tagsOf].flatMap(([refdes, tags]) => {
    const kinds = new Set(tags.map((tag) => tag.kind));
    const target = context.siteOfTarget.has(refdes);
    const found: Finding[] = [];
    if (kinds.has('remove') && kinds.has('shield'))
      found.push(finding('shield-on-removed-part', 'warn', onPart(refdes), { refdes }, null));
    if (target && (kinds.has('remove') || kinds.has('shield')))
      found.push(
        finding(
          'target-tagged-otherwise',
          'stop',
          onPart(refdes),
          { refdes, tag: kinds.has('remove') ? 'remove' : 'shield' },
          null,
        ),
      );
    return found;
  });
}

const METAL_WMK = 10;

function shieldFindings({ plan }: PlanningContext): Finding[] {
  const tags = plan.tags.filter((tag): tag is TagOf<'shield'> => tag.kind === 'shield');
  const unknown = tags.filter((tag) => !shieldById(tag.shield));
  const metal = tags.filter((tag) =>
    shieldById(tag.shield)?.layers.some((layer) => layer.kind === 'solid' && layer.conductivityWmK > METAL_WMK),
  );
  return [
    ...grouped(
      'shield-not-in-library',
      'warn',
      unknown,
      () => 0,
      (worst) => ({ shield: worst.shield }),
      null,
    ),
    ...grouped(
      'shields-conduct',
      'note',
      metal,
      () => 0,
      () => ({}),
      commonPractice('metal conducts: keep it off live pads and cells'),
    ),
  ];
}

/** A reading to start, stop and abort by needs a thermocouple somewhere. */
function watchFindings({ plan }: PlanningContext): Finding[] {
  if (plan.sites.length === 0 || plan.tags.some((tag) => tag.kind === 'watchPoint')) return [];
  return [
    finding('no-watch-point', 'warn', onBoard, {}, commonPractice("a thermocouple at the target's coldest corner")),
  ];
}

/** What the plan's own bookkeeping lacks. */
export const planFindings = (context: PlanningContext): Finding[] =>
  [
    siteRunFindings,
    runFindings,
    traySlotFindings,
    orderFindings,
    tagPartFindings,
    contradictionFindings,
    shieldFindings,
    watchFindings,
  ].flatMap((check) => check(context));
