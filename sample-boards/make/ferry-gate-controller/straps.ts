import type { StrapGroup, StrapWork } from '../../../shared-types/straps.ts';

const CODES = 8;
const SUPPLY_V = 3.3;

/** Which gate drive is built in: a divider that the controller's converter reads, eight codes over the supply. */
export const DRIVE_STRAP: StrapGroup = {
  kind: 'divider',
  id: 'strap-1',
  name: 'Gate drive',
  describes: [],
  positions: [
    { refdes: 'R1', value: '', tolerancePercent: 1, meaning: 'to the supply' },
    { refdes: 'R2', value: '', tolerancePercent: 1, meaning: 'to ground' },
  ],
  top: 'R1',
  bottom: 'R2',
  supplyV: SUPPLY_V,
  supplyTolerancePercent: 3,
  ratiometric: true,
  converterErrorMv: 8,
  windows: Array.from({ length: CODES }, (_, code) => ({
    code: String(code),
    fromV: Number(((SUPPLY_V * code) / CODES).toFixed(4)),
    toV: Number(((SUPPLY_V * (code + 1)) / CODES).toFixed(4)),
  })),
  settings: [
    { id: 'setting-1', label: '24 V drive', maker: '', capacity: null, code: '2', top: '10k', bottom: '4k7' },
    { id: 'setting-2', label: '48 V drive', maker: '', capacity: null, code: '3', top: '10k', bottom: '8k2' },
    // Half the supply is the edge between codes 3 and 4: the drawing office's slip of this invented board.
    { id: 'setting-3', label: '110 V drive', maker: '', capacity: null, code: '4', top: '10k', bottom: '10k' },
  ],
};

/** Asks for the setting whose code cannot be told. */
export const DRIVE_WORK: StrapWork = {
  wanted: [{ groupId: 'strap-1', settingId: 'setting-3' }],
  stock: [{ value: '10k', size: '0402', tolerancePercent: 1, count: 10 }],
  stockFirst: false,
  ticked: [],
};
