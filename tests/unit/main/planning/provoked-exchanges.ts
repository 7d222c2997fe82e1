import type { Plan } from '../../../../shared-types/plan.ts';
import { type SiteExchange, type StrapGroup, unknownPart } from '../../../../shared-types/straps.ts';
import type { Change, Row } from './provoked-findings.ts';
import { partOf } from './support.ts';

export function strapped({ wanted, lost, gbitOn }: { wanted: string; lost?: string; gbitOn?: number }): Change {
  const strap = (refdes: string, value: string, fitted: boolean) =>
    partOf(refdes, 'chip-resistor', {
      value,
      fitted,
      package: { ...partOf('', 'chip-resistor').package, lengthMm: 1, widthMm: 0.5 },
    });
  const position = (refdes: string, value: string) => ({ refdes, value, tolerancePercent: null, meaning: '' });
  const group: StrapGroup = {
    kind: 'jumpers',
    id: 'g',
    name: 'Memory',
    describes: ['U1'],
    positions: [position('R1', '10k'), position(lost ?? 'R2', '4k7')],
    settings: [{ id: 's', label: 'wanted', maker: '', capacity: { amount: 8, unit: 'Gbit' }, code: wanted }],
  };
  const capacity = gbitOn === undefined ? null : { amount: gbitOn, unit: 'Gbit' as const };
  return {
    parts: [strap('R1', '10k', true), strap('R2', '4k7', false)],
    board: { straps: [group] },
    plan: (plan) => ({
      ...exchange(plan, { on: { ...unknownPart(), capacity } }),
      straps: { ...plan.straps, wanted: [{ groupId: 'g', settingId: 's' }] },
    }),
  };
}

const exchange = (plan: Plan, fields: Partial<SiteExchange>): Plan => ({
  ...plan,
  exchanges: [
    { siteId: plan.sites[0].id, off: unknownPart(), on: unknownPart(), agrees: 'agrees', agreesNote: '', ...fields },
  ],
});
const exchanged = (fields: Partial<SiteExchange>): Change => ({ plan: (plan) => exchange(plan, fields) });

/** Findings of straps and of what comes in. */
export const exchangeRows: Row[] = [
  ['strap-refused', 'warn', strapped({ wanted: '01' })],
  ['straps-move', 'note', strapped({ wanted: '00' })],
  ['strap-group-faulty', 'warn', strapped({ wanted: '10', lost: 'R99' })],
  ['capacity-differs', 'warn', strapped({ wanted: '10', gbitOn: 4 })],
  ['capacity-unknown', 'note', strapped({ wanted: '10' })],
  ['incoming-differs', 'warn', exchanged({ agrees: 'differs' })],
  ['balls-differ', 'warn', exchanged({ on: { ...unknownPart(), ballAlloy: 'sn63pb37' } })],
  [
    'incoming-height',
    'note',
    exchanged({ off: { ...unknownPart(), heightMm: 1 }, on: { ...unknownPart(), heightMm: 1.2 } }),
  ],
];
