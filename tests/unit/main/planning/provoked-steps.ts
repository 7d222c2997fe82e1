import type { Plan } from '../../../../shared-types/plan.ts';
import type { StepReading } from '../../../../shared-types/steps.ts';
import { strapped } from './provoked-exchanges.ts';
import { type Row, remove, withTags } from './provoked-findings.ts';
import { partOf } from './support.ts';

/** A step with a reading that does not agree. */
const read =
  (stepId: string, ...readings: StepReading[]) =>
  (plan: Plan): Plan => {
    const mark = { stepId, done: false, by: '', at: '', readings, note: '', words: '', phase: 'received' };
    return { ...plan, steps: { ...plan.steps, marks: [mark] } };
  };
const sums = [
  { key: 'check-sum-1', value: 'a' },
  { key: 'check-sum-2', value: 'b' },
];
const straps = strapped({ wanted: '10', gbitOn: 8 });

/** Findings about what was entered at steps. */
export const stepRows: Row[] = [
  [
    'tray-count-differs',
    'stop',
    {
      parts: [partOf('C9', 'so', { x: 20 })],
      plan: (plan) => read('count-off', { key: 'off', value: 2 })(withTags(remove('C9'))(plan)),
    },
  ],
  [
    'read-outs-differ',
    'stop',
    {
      parts: [partOf('U9', 'serial-memory', { x: 20 })],
      plan: (plan) =>
        read(
          'read-out:U9',
          ...sums,
        )(withTags({ id: 'p9', kind: 'reprogram', refdes: 'U9', order: null, note: '', way: 'in-circuit' })(plan)),
    },
  ],
  // A memory that nothing is planned for: it is read out because its joints melt where it lies.
  [
    'read-outs-differ',
    'stop',
    {
      parts: [partOf('U9', 'serial-memory', { x: 20 })],
      heat: { U9: { joint: 240 } },
      plan: read('read-out:U9', ...sums),
    },
  ],
  [
    'strap-code-read-differs',
    'stop',
    { ...straps, plan: (plan) => read('strap-read:g', { key: 'code', value: '11' })(straps.plan?.(plan) ?? plan) },
  ],
];
