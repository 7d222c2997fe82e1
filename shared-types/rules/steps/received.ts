import type { Part } from '../../board.ts';
import { found } from '../../library/sources.ts';
import { draft, holdsData, isCell, partName, type StepContext, tagsOfKind } from './context.ts';
import type { Expected, StepDraft } from './types.ts';

const HEAT_AND_DATA = found(
  'Data I/O, oven reflow best practices (2021): up to three reflows without data loss, slower reads until refreshed',
  'M',
);

type DataPart = { part: Part; how: 'in-circuit' | 'written' | 'lifted' | 'stays' };

/** Firmware parts: to be written, exchanged or lifted, or a memory whose joints melt where it lies. */
export function dataParts(context: StepContext): DataPart[] {
  const { plan, board } = context;
  const targets = new Set(plan.sites.map(({ target }) => target));
  const way = new Map(tagsOfKind(plan, 'reprogram').map((tag) => [tag.refdes, tag.way]));
  const off = new Set(tagsOfKind(plan, 'remove').map(({ refdes }) => refdes));
  return board.parts.flatMap((part): DataPart[] => {
    const { refdes } = part;
    if (!part.fitted) return [];
    if (way.get(refdes) === 'in-circuit') return [{ part, how: 'in-circuit' }];
    if (way.has(refdes) || (targets.has(refdes) && holdsData(part))) return [{ part, how: 'written' }];
    if (!holdsData(part)) return [];
    if (off.has(refdes)) return [{ part, how: 'lifted' }];
    const melts = (context.exposures.get(refdes)?.reflow ?? 'none') !== 'none';
    return melts ? [{ part, how: 'stays' }] : [];
  });
}

const sum = (name: 'check-sum-1' | 'check-sum-2'): Expected => ({
  key: name,
  name,
  of: '',
  unit: 'text',
  predicted: null,
});

function dataSteps(context: StepContext): StepDraft[] {
  return dataParts(context).flatMap(({ part, how }) => {
    const about = { parts: [part.refdes] };
    const figures = { refdes: part.refdes, name: partName(part), how };
    const steps = [
      draft('read-out', part.refdes, 'received', figures, {
        ...about,
        expects: [sum('check-sum-1'), sum('check-sum-2')],
        source: how === 'stays' ? HEAT_AND_DATA : null,
        cautions: ['static'],
      }),
    ];
    if (how === 'written' || how === 'in-circuit')
      steps.push(draft('data-block', part.refdes, 'received', figures, about));
    // Lifted only to be written: perhaps it need not be.
    if (how === 'written')
      steps.unshift(draft('in-circuit-first', part.refdes, 'received', figures, { ...about, alert: 'warn' }));
    return steps;
  });
}

/** The unit as it came: what it does, what it draws, what its rails measure, what its memories hold. */
export function receivedSteps(context: StepContext): StepDraft[] {
  const { board, plan } = context;
  return [
    draft('record', '', 'received', { unit: plan.ticket.unit }),
    draft(
      'note-resistance',
      '',
      'received',
      {},
      {
        expects: [{ key: 'resistance', name: 'resistance', of: '', unit: 'ohm', predicted: null }],
        cautions: ['power-off'],
      },
    ),
    draft(
      'note-power',
      '',
      'received',
      {},
      {
        expects: [{ key: 'current', name: 'current', of: '', unit: 'A', predicted: null }],
        cautions: board.parts.some((part) => part.fitted && isCell(part)) ? ['cells'] : [],
      },
    ),
    ...dataSteps(context),
  ];
}
