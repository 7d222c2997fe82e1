import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isClassId } from '../../../../shared-types/library/classes.ts';
import { type GuessInput, guessPart } from '../../../../shared-types/library/guess-part.ts';

const guess = (refdes: string, packageName: string, more: Partial<GuessInput> = {}) =>
  guessPart({ refdes, packageName, value: '', pinCount: null, bodyMm: null, ...more });

/** Name, designator, class, length, width, height (null: the name does not say). */
type Row = [packageName: string, refdes: string, classId: string, size?: [number, number, number | null]];

const check = (rows: Row[]) => {
  for (const [packageName, refdes, classId, size] of rows) {
    const result = guess(refdes, packageName);
    expect(result.classId, packageName).toBe(classId);
    if (size) {
      const { lengthMm, widthMm, heightMm } = result.package!;
      expect([lengthMm, widthMm], packageName).toEqual([size[0], size[1]]);
      if (size[2] !== null) expect(heightMm, packageName).toBe(size[2]);
    }
    expect(result.reason, packageName).toMatch(/\.$/);
  }
};

describe('guessing a class from a package name', () => {
  it('reads chip codes in the forms placement files use', () => {
    check([
      ['GEN_C_0402', 'C1', 'chip-capacitor', [1, 0.5, null]],
      ['C_0603_1608Metric', 'C1', 'chip-capacitor', [1.6, 0.8, null]],
      ['R_0805_2012Metric_Pad1.29x1.40mm_HandSolder', 'R1', 'chip-resistor', [2, 1.25, null]],
      ['RES0805', 'R1', 'chip-resistor', [2, 1.25, null]],
      ['CAP0402', 'C1', 'chip-capacitor', [1, 0.5, null]],
      ['SMC0805', 'C1', 'chip-capacitor', [2, 1.25, null]],
      ['C0603L', 'C34', 'chip-capacitor', [1.6, 0.8, null]],
      ['0805_REFL', 'R260', 'chip-resistor', [2, 1.25, null]],
      ['1206_REFL', 'C100', 'chip-capacitor', [3.2, 1.6, null]],
      ['C_1210_3225Metric', 'C7', 'chip-capacitor-large', [3.2, 2.5, null]],
      ['LED_0603', 'D4', 'led', [1.6, 0.8, null]],
      ['0404LED_RGB', 'D1', 'led', [1, 1, null]],
      ['FUSE_1812', 'F1', 'fuse', [4.5, 3.2, null]],
      ['GEN_R_0402', 'FB1', 'chip-ferrite', [1, 0.5, null]],
      ['R_Array_Convex_4x0603', 'RN1', 'chip-array', [3.2, 1.6, null]],
    ]);
  });

  it('reads land pattern names after IPC-7351 (examples of the naming convention, from memory)', () => {
    check([
      ['CAPC1005X55N', 'C1', 'chip-capacitor', [1, 0.5, 0.55]],
      ['RESC1608X50N', 'R1', 'chip-resistor', [1.6, 0.8, 0.5]],
      ['CAPC3225X270N', 'C1', 'chip-capacitor-large', [3.2, 2.5, 2.7]],
      ['RESC200X125X70L40N', 'R1', 'chip-resistor', [2, 1.25, 0.7]],
      ['CAPMP7343X310N', 'C1', 'tantalum', [7.3, 4.3, 3.1]],
      ['CAPAE830X1050N', 'C1', 'electrolytic-medium', [8.3, 8.3, 10.5]],
      ['SOIC127P600X175-8N', 'U1', 'so', [4.88, 4, 1.75]],
      ['SOP65P640X120-16N', 'U1', 'so', [5, 4.4, 1.2]],
      ['QFP50P1200X1200X160-64N', 'U1', 'qfp', [10, 10, 1.6]],
      ['QFN50P500X500X80-33N', 'U1', 'qfn', [5, 5, 0.8]],
      ['SON50P300X200X60-9N', 'U4', 'qfn', [3, 2, 0.6]],
      ['SOT95P280X145-5N', 'U1', 'sot', [2.9, 1.6, 1.45]],
      ['SOT23-5P95_270X145L35X35N', 'U1', 'sot', [2.9, 1.5, 1.45]],
      ['SODFL120X80X70L30X30', 'D2', 'diode', [1.2, 0.8, 0.7]],
      ['BGA256C100P16X16_1700X1700X170N', 'U1', 'bga', [17, 17, 1.7]],
    ]);
  });

  it('reads the families of integrated circuits', () => {
    check([
      ['SOIC-8_3.9x4.9mm_P1.27mm', 'U1', 'so', [3.9, 4.9, null]],
      ['TSSOP16N', 'U12', 'so', [5, 4.4, null]],
      ['TSOP54', 'U2', 'so', [22.2, 10.2, 1.2]],
      ['SOL-28', 'U200', 'so', [17.9, 7.5, null]],
      ['QFN-32-1EP_5x5mm', 'U1', 'qfn', [5, 5, null]],
      ['AB231X-QFN-20-1EP_4x4mm_P0.5mm_EP2x2mm', 'U6', 'qfn', [4, 4, null]],
      ['X1-DFN1006-2', 'D1', 'qfn', [1, 0.6, null]],
      ['LQFP-100_14x14mm_P0.5mm', 'U1', 'qfp', [14, 14, null]],
      ['SOT-23-5', 'U1', 'sot', [2.9, 1.6, null]],
      ['GEN_SOT23_5_950_2900X1600X1450', 'U4', 'sot', [2.9, 1.6, 1.45]],
      ['XY_TSOT-23-16_DYY0016A', 'U1001', 'so'],
      ['D_SOD-123', 'D1', 'diode', [2.7, 1.6, null]],
      ['SMDO214AB12', 'D2', 'diode', [6.9, 5.9, null]],
      ['Package_BGA:BGA-256_17.0x17.0mm_P1.0mm', 'U1', 'bga', [17, 17, null]],
      ['BGA-96_9.0x13.0mm_Layout2x3x16_P0.8mm', 'U11', 'bga', [9, 13, null]],
      ['caBGA_381_17x17', 'U4', 'bga', [17, 17, null]],
      ['CSG325', 'U18', 'bga'],
      ['MAKER_PART7A50T-2CSG325C', 'U18', 'bga'],
      ['TO-263-5_v2', 'IC35', 'power-package', [10.2, 9.2, null]],
    ]);
  });

  it('reads capacitors in cans, crystals, cells, switches and connectors', () => {
    check([
      ['CP_Elec_6.3x7.7', 'C5', 'electrolytic-small', [6.3, 6.3, 7.7]],
      ['CP_Elec_10x10.5', 'C5', 'electrolytic-medium', [10, 10, 10.5]],
      ['CP_Elec_16x17.5', 'C5', 'electrolytic-large', [16, 16, 17.5]],
      ['CP_Radial_D10.0mm_P5.00mm', 'C5', 'electrolytic-leaded', [10, 10, null]],
      ['CP_EIA-3528-21_Case-B', 'C5', 'tantalum', [3.5, 2.8, 2.1]],
      ['XTAL-3.2x2.5', 'Y1', 'crystal', [3.2, 2.5, null]],
      ['Crystal_SMD_7050_4Pads', 'Y1', 'crystal', [7, 5, null]],
      ['Oscillator_SMD_2.5x2.0mm', 'X1', 'crystal', [2.5, 2, null]],
      ['BatteryHolder_1x12mm-CoinCell', 'BAT1', 'coin-cell', [14, 14, null]],
      ['SW_SPST_6mm', 'B0', 'tact-switch'],
      ['SW_DIP_x4_W8.61mm_Slide_LowProfile', 'SW1', 'slide-switch'],
      ['USB_C_Receptacle', 'J1', 'connector-unknown'],
      ['PinHeader_1x06_P2.54mm_Vertical', 'J6', 'connector-unknown'],
      ['MAGJACK', 'CON1', 'connector-unknown'],
      ['L_AB3015', 'L1', 'power-inductor', [3, 3, 1.5]],
      ['Fiducial_0.75mm_Mask1.5mm', 'FID1', 'mark-on-board'],
      ['TestPoint_Pad_D1.5mm', 'TP3', 'test-point'],
    ]);
  });

  it('knows that 0603, 0402 and 0201 exist in two systems: the pads decide, else it says that it is unsure', () => {
    const unsure = guess('C1', 'C0603');
    expect(unsure.package).toMatchObject({ lengthMm: 1.6, widthMm: 0.8 });
    expect(unsure.reason).toContain('inch and in metric');
    expect(unsure.reason).toContain('Check it');
    const small = guess('C1', 'C0603', { bodyMm: { lengthMm: 0.9, widthMm: 0.4 } });
    expect(small.package).toMatchObject({ lengthMm: 0.6, widthMm: 0.3 });
    const large = guess('C1', 'C0603', { bodyMm: { lengthMm: 2.3, widthMm: 0.9 } });
    expect(large.package).toMatchObject({ lengthMm: 1.6, widthMm: 0.8 });
    expect(large.reason).not.toContain('Check it');
    expect(guess('R1', 'R_0201_0603Metric').package).toMatchObject({ lengthMm: 0.6, widthMm: 0.3 });
    expect(guess('R1', '1608').package).toMatchObject({ lengthMm: 1.6, widthMm: 0.8 });
  });
});

describe('guessing a class from pads, value and designator', () => {
  it('takes a fine grid of pads for an array whatever the name says of its maker', () => {
    const result = guess('U5', 'MAKERPART-UWG30', { padGrid: { columns: 18, rows: 18, pitchMm: 0.8 }, pinCount: 324 });
    expect(result.classId).toBe('bga');
    expect(result.package).toMatchObject({ lengthMm: 15, widthMm: 15 });
    expect(result.reason).toContain('18 x 18');
    expect(guess('U18', 'X-2CSG325C', { padGrid: { columns: 18, rows: 18, pitchMm: 0.8 } }).package?.lengthMm).toBe(15);
    expect(guess('U5', 'UWG30', { padGrid: { columns: 5, rows: 6, pitchMm: 0.4 } }).classId).toBe('csp');
  });

  it('does not take a header or two rows of pads for an array', () => {
    const header = guess('CON7', '8X3HEADER_2.54MM', { padGrid: { columns: 8, rows: 3, pitchMm: 2.54 } });
    expect(header.classId).toBe('connector-unknown');
    expect(guess('U9', '', { padGrid: { columns: 8, rows: 2, pitchMm: 1.27 } }).classId).toBe('unknown');
  });

  it('falls back to the designator and to the size of the pads', () => {
    const pads = { bodyMm: { lengthMm: 2.2, widthMm: 1.3 } };
    expect(guess('C9', 'ABCD43', pads)).toMatchObject({
      classId: 'chip-capacitor',
      package: { lengthMm: 2.2, widthMm: 1.3, heightMm: null },
    });
    expect(guess('BT1', 'XYZ').classId).toBe('battery');
    expect(guess('J3', 'XY_009155002852006').classId).toBe('connector-unknown');
    expect(guess('DZ100', '1206-D_REFL').classId).toBe('diode');
  });

  it('lets the value tell a memory that holds data and a thermistor', () => {
    expect(guess('U7', 'BGA-153_11.5x13mm', { value: 'eMMC 16G' }).classId).toBe('flash-memory');
    expect(guess('R9', 'R_0603_1608Metric', { value: 'NTC 10k' }).classId).toBe('ntc');
  });

  it('says so, and judges with care, when nothing tells what a part is', () => {
    const result = guess('U1', '');
    expect(result).toMatchObject({ classId: 'unknown', package: null });
    expect(result.reason).toContain('judged with care');
    expect(guess('HEAD', 'KEY-98').classId).toBe('unknown');
  });

  it('lays the body along the pads', () => {
    const along = guess('U1', 'TSSOP16N', { bodyMm: { lengthMm: 6.4, widthMm: 5 } });
    expect(along.package).toMatchObject({ lengthMm: 5, widthMm: 4.4 });
    const tall = guess('C1', 'C_0603_1608Metric', { bodyMm: { lengthMm: 0.9, widthMm: 2.4 } });
    expect(tall.package).toMatchObject({ lengthMm: 0.8, widthMm: 1.6 });
  });
});

const POSITIONS = new URL(
  '../../../../../shared/boards/thunderscope/Thunderscope_Rev5.3_TS-USB4_Positions.txt',
  import.meta.url,
);

describe('a real placement file', () => {
  it('gives every part a class of the library, and leaves few of them unknown', ({ skip }) => {
    if (!existsSync(POSITIONS)) return skip('../shared/boards is not here');
    const rows = readFileSync(POSITIONS, 'latin1')
      .split('\n')
      .filter((line) => line.trim() && !line.startsWith('#'))
      .map((line) => line.trim().split(/\s+/));
    const classes = rows.map(([refdes, , packageName]) => guess(refdes, packageName).classId);
    expect(rows).toHaveLength(737);
    expect(classes.every(isClassId)).toBe(true);
    expect(classes.filter((id) => id === 'unknown').length).toBeLessThanOrEqual(2);
    expect(classes.filter((id) => id === 'bga')).toHaveLength(1);
  });
});
