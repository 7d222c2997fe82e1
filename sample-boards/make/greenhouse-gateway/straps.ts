import type { Site } from '../../../shared-types/plan.ts';
import {
  type Capacity,
  type ExchangedPart,
  type SiteExchange,
  type StrapGroup,
  type StrapWork,
  unknownPart,
} from '../../../shared-types/straps.ts';

const gbit = (amount: number): Capacity => ({ amount, unit: 'Gbit' });
const setting = (id: string, maker: string, label: string, amount: number, code: string) => ({
  id,
  label,
  maker,
  capacity: gbit(amount),
  code,
});

/** Memory maker and size, as the boot code reads them. Both makers are inventions. */
export const MEMORY_STRAPS: StrapGroup = {
  kind: 'jumpers',
  id: 'strap-1',
  name: 'Memory',
  describes: ['U2', 'U3'],
  positions: [
    { refdes: 'R101', value: '10k', tolerancePercent: 5, meaning: 'memory by Brenmark' },
    { refdes: 'R102', value: '10k', tolerancePercent: 5, meaning: 'memory by Tolvane' },
    { refdes: 'R103', value: '10k', tolerancePercent: 5, meaning: 'two packages' },
    { refdes: 'R104', value: '10k', tolerancePercent: 5, meaning: '4 Gbit a package' },
    { refdes: 'R105', value: '4k7', tolerancePercent: 5, meaning: '8 Gbit a package' },
  ],
  settings: [
    setting('setting-1', 'Brenmark', '2 x 4 Gbit, Brenmark', 8, '10110'),
    setting('setting-2', 'Tolvane', '2 x 4 Gbit, Tolvane', 8, '01110'),
    setting('setting-3', 'Brenmark', '2 x 8 Gbit, Brenmark', 16, '10101'),
    setting('setting-4', 'Tolvane', '2 x 8 Gbit, Tolvane', 16, '01101'),
    setting('setting-5', 'Brenmark', '1 x 8 Gbit, Brenmark', 8, '10001'),
    setting('setting-6', 'Tolvane', '1 x 4 Gbit, Tolvane', 4, '01010'),
  ],
};

export const STRAP_WORK: StrapWork = {
  wanted: [{ groupId: 'strap-1', settingId: 'setting-4' }],
  stock: [
    { value: '4k7', size: '0402', tolerancePercent: 1, count: 50 },
    { value: '10k', size: '0402', tolerancePercent: 1, count: 20 },
  ],
  stockFirst: false,
  ticked: [],
};

const memory = (name: string, marking: string, amount: number, heightMm: number, powerW: number): ExchangedPart => ({
  name,
  marking,
  count: 1,
  capacity: gbit(amount),
  ballAlloy: 'sac305',
  heightMm,
  powerW,
});

/** What goes out and in at the processor and the two memories. */
export function exchangesFor(sites: readonly Site[]): SiteExchange[] {
  const [processor, ...memories] = sites;
  const soc = { ...unknownPart(), ballAlloy: 'sac305', heightMm: 1.5 };
  return [
    {
      siteId: processor.id,
      off: { ...soc, name: 'HG-SOC17', marking: 'SOC17 S1', powerW: 3.2 },
      on: { ...soc, name: 'HG-SOC17, stepping 2', marking: 'SOC17 S2', powerW: 3 },
      agrees: 'agrees',
      agreesNote: 'Same ball-out; maker note for stepping 2 (invented).',
    },
    ...memories.map(
      (site): SiteExchange => ({
        siteId: site.id,
        off: memory('Brenmark HG-MEM4G', 'BM4G-A', 4, 1, 0.4),
        on: memory('Tolvane HG-MEM8G', 'TV8G-C', 8, 1.2, 0.45),
        agrees: 'agrees',
        agreesNote: 'Same ball-out and organisation, twice the rows (invented).',
      }),
    ),
  ];
}
