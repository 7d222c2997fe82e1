import type { Bench } from '../bench.ts';

const same = (value: string, count: number): string[] => Array.from({ length: count }, () => value);

/** Processor, two memories, eMMC, boot flash, and the parts that stand close round them. */
export function placeCompute(bench: Bench): void {
  const { place, row } = bench;
  place('U1', 'BGA 17x17 0.8', 70, 58, { value: 'HG-SOC17 processor' });
  place('U2', 'BGA 9x13 0.8', 91, 66.5, { value: 'HG-MEM4G memory' });
  place('U3', 'BGA 9x13 0.8', 91, 50.5, { value: 'HG-MEM4G memory' });
  place('U4', 'BGA 11.5x13 0.5', 43.5, 60, { value: 'eMMC 16 GB' });
  place('U5', 'SOIC-8', 46, 47.5, { value: 'Boot flash 128M' });
  bypassRoundProcessor(bench);
  // Terminations of the address bus between processor and memories.
  row('RN', 'RN 4x0402', { x: 82.2, y: 49.5 }, { x: 0, y: 3.6 }, same('4x33', 6), { turn: 90 });
  bypassRoundMemory(bench, 66.5);
  bypassRoundMemory(bench, 50.5);
  // Series resistors of the eMMC bus, its bypass parts, those of the flash.
  row('RN', 'RN 4x0402', { x: 51.4, y: 58 }, { x: 0, y: 4 }, same('4x22', 2), { turn: 90 });
  row('C', 'C 0402', { x: 42, y: 67.6 }, { x: 3, y: 0 }, ['100n', '1u'], {});
  place('C', 'C 0603', 36.4, 63, { turn: 90, value: '4u7' });
  place('C', 'C 0402', 36.4, 59.5, { turn: 90, value: '100n' });
  place('R', 'R 0402', 51.4, 54.4, { turn: 90, value: '10k' });
  place('C', 'C 0402', 41.8, 49, { turn: 90, value: '100n' });
  place('Y', 'Crystal 3.2x2.5', 58.5, 69.6, { value: '24M' });
  row('C', 'C 0402', { x: 55.6, y: 68.8 }, { x: 0, y: 1.6 }, ['12p', '12p'], { turn: 90 });
}

/** Rows of 0402 along three sides, ends outwards; the fourth faces the memories and is left to their bus. */
function bypassRoundProcessor({ place, row }: Bench): void {
  const values = ['100n', '1u', '100n', '100n', '1u', '100n', '100n', '1u'];
  row('C', 'C 0402', { x: 63.4, y: 68 }, { x: 1.9, y: 0 }, values, { turn: 90 });
  row('C', 'C 0402', { x: 63.4, y: 48 }, { x: 1.9, y: 0 }, values, { turn: 90 });
  row('C', 'C 0402', { x: 60, y: 53.25 }, { x: 0, y: 1.9 }, values.slice(0, 6), {});
  place('C', 'C 0805', 59.8, 48.4, { turn: 90, value: '22u' });
  place('C', 'C 0805', 80.2, 46.4, { turn: 90, value: '22u' });
  place('C', 'C 0805', 80.4, 70.6, { turn: 90, value: '22u' });
}

function bypassRoundMemory({ row }: Bench, y: number): void {
  row('C', 'C 0402', { x: 85.5, y: y - 4.2 }, { x: 0, y: 4.2 }, ['100n', '1u', '100n'], { turn: 90 });
  row('C', 'C 0402', { x: 96.6, y: y - 4.2 }, { x: 0, y: 4.2 }, ['100n', '1u', '100n'], { turn: 90 });
}

/** Strap resistors of the memory size: five positions, three fitted. */
export function placeStraps({ place }: Bench): void {
  [true, false, true, true, false].forEach((fitted, index) => {
    const value = index === 4 ? '4k7' : '10k';
    place(`R${101 + index}`, 'R 0402', 62 + index * 1.5, 44.7, { turn: 90, value, fitted });
  });
}
