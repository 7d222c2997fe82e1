import type { StepReading } from '../../steps.ts';
import type { Figures } from '../../words/figures.ts';
import { capacityWords } from '../../words/straps.ts';
import { names, partsOff } from './before-heat.ts';
import { draft, isCell, partName, type StepContext } from './context.ts';
import { dataParts } from './received.ts';
import type { Expected, StepDraft } from './types.ts';

/** A figure noted at an earlier step; null: not noted. */
function noted({ plan }: StepContext, stepId: string, key: string): StepReading['value'] | null {
  const mark = plan.steps.marks.find((one) => one.stepId === stepId);
  return mark?.readings.find((reading) => reading.key === key)?.value ?? null;
}

/** Groups with a wanted setting, with the code that the board must read. */
const wantedGroups = ({ board, plan }: StepContext) =>
  plan.straps.wanted.flatMap(({ groupId, settingId }) => {
    const group = board.straps.find(({ id }) => id === groupId);
    const setting = group?.settings.find(({ id }) => id === settingId);
    return group && setting ? [{ group, setting }] : [];
  });

function strapChecks(context: StepContext): StepDraft[] {
  return wantedGroups(context).flatMap(({ group, setting }) => {
    const parts = group.positions.map(({ refdes }) => refdes);
    const capacity = setting.capacity ? capacityWords(setting.capacity) : '';
    const figures = { group: group.name, code: setting.code, label: setting.label, capacity };
    const code: Expected = {
      key: 'code',
      name: 'code',
      of: group.name,
      unit: 'text',
      predicted: setting.code,
      exact: true,
    };
    const reported: Expected = {
      key: 'reported',
      name: 'reported',
      of: group.name,
      unit: 'text',
      predicted: capacity || setting.label,
    };
    return [
      draft('strap-read', group.id, 'before-power', figures, { parts, expects: [code] }),
      draft('strap-report', group.id, 'power-on', figures, { parts: group.describes, expects: [reported] }),
    ];
  });
}

/** A part that is off only to be written: it belongs to no site, so no run places it. */
function liftedToWrite({ plan }: StepContext, figures: Figures, refdes: string): StepDraft {
  const off = plan.tags.some((tag) => tag.kind === 'remove' && tag.refdes === refdes);
  const sum: Expected = { key: 'check-sum', name: 'check-sum', of: '', unit: 'text', predicted: null };
  return draft(
    'program-part',
    refdes,
    'afterwards',
    { ...figures, alone: Number(!off) },
    {
      parts: [refdes],
      expects: [sum],
      cautions: ['static', 'burns'],
    },
  );
}

function firmwareSteps(context: StepContext): StepDraft[] {
  const targets = new Set(context.plan.sites.map(({ target }) => target));
  return dataParts(context).flatMap(({ part, how }) => {
    const figures = { refdes: part.refdes, name: partName(part), how };
    const sum: Expected = {
      key: 'check-sum',
      name: 'check-sum',
      of: '',
      unit: 'text',
      // What goes on holds what came off, unless something new was written: then its own sum counts.
      predicted:
        how === 'stays' || how === 'lifted'
          ? noted(context, `read-out:${part.refdes}`, 'check-sum-1')
          : noted(context, `program-part:${part.refdes}`, 'check-sum'),
    };
    const about = { parts: [part.refdes], cautions: ['static'] as const };
    return [
      ...(how === 'written' && !targets.has(part.refdes) ? [liftedToWrite(context, figures, part.refdes)] : []),
      ...(how === 'in-circuit' ? [draft('program-in-circuit', part.refdes, 'before-power', figures, about)] : []),
      ...(leavesEmpty(context, part.refdes)
        ? []
        : [draft('read-back', part.refdes, 'power-on', figures, { ...about, expects: [sum] })]),
    ];
  });
}

/** A part that was worked on and is not on the board when it is checked: it stays off, or nothing is soldered in its place. */
function leavesEmpty({ plan }: StepContext, refdes: string): boolean {
  const sites = plan.sites.filter(({ target }) => target === refdes);
  if (sites.length > 0) {
    const filled = plan.heatRuns.filter(({ kind }) => kind === 'installation').flatMap(({ siteIds }) => siteIds);
    return !sites.some(({ id }) => filled.includes(id));
  }
  return plan.tags.some((tag) => tag.kind === 'remove' && tag.refdes === refdes && !tag.goesBack);
}

/** Parts off and on again by the time the power comes; cells follow later, with a step of their own. */
function handledParts(context: StepContext): string[] {
  const handled = [...context.plan.sites.map(({ target }) => target), ...partsOff(context).map(({ refdes }) => refdes)];
  return [...new Set(handled)].filter((refdes) => !leavesEmpty(context, refdes) && !isCell(context.parts.get(refdes)));
}

/** What is checked before power, and at power-on, with the figures noted when the unit came. */
export function powerSteps(context: StepContext): StepDraft[] {
  const { plan } = context;
  const handled = handledParts(context);
  const cells = partsOff(context).some(({ refdes }) => isCell(context.parts.get(refdes)));
  const resistance = noted(context, 'note-resistance', 'resistance');
  const current = noted(context, 'note-power', 'current');
  return [
    draft(
      'no-shorts',
      '',
      'before-power',
      { noted: Number(resistance !== null) },
      {
        expects: [{ key: 'resistance', name: 'resistance', of: '', unit: 'ohm', predicted: resistance }],
        cautions: ['power-off'],
      },
    ),
    ...(handled.length > 0 ? [draft('polarity', '', 'before-power', names(handled), { parts: handled })] : []),
    ...strapChecks(context),
    ...firmwareSteps(context),
    draft('supply', '', 'power-on', { cells: Number(cells) }, { cautions: ['eyes'] }),
    draft(
      'current',
      '',
      'power-on',
      { noted: Number(current !== null) },
      {
        expects: [{ key: 'current', name: 'current', of: '', unit: 'A', predicted: current }],
      },
    ),
    draft('function-test', '', 'power-on', { order: plan.ticket.order }),
    draft('hand-back', '', 'hand-back', {}),
  ];
}
