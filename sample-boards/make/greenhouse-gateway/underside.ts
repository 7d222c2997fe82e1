import type { Bench } from '../bench.ts';

const same = (value: string, count: number): string[] => Array.from({ length: count }, () => value);

/** What sits on the lower side: bypass parts under the arrays, small logic, test points. */
export function placeUnderside(bench: Bench): void {
  underProcessor(bench);
  underMemories(bench);
  smallLogic(bench);
  testPoints(bench);
}

/** Rows of 0402 between the ball rows of the core, larger parts round them. */
function underProcessor({ place, row }: Bench): void {
  const side = 'bottom';
  for (let line = 0; line < 4; line++)
    row('C', 'C 0402', { x: 66.7, y: 54.7 + line * 2.2 }, { x: 2.2, y: 0 }, same(line % 2 ? '1u' : '100n', 4), {
      side,
      turn: 90,
    });
  row('C', 'C 0603', { x: 62.4, y: 54.8 }, { x: 0, y: 3.2 }, same('10u', 3), { side });
  row('C', 'C 0603', { x: 77.6, y: 54.8 }, { x: 0, y: 3.2 }, same('10u', 3), { side });
  row('C', 'C 0805', { x: 66, y: 67.2 }, { x: 4, y: 0 }, same('22u', 3), { side, turn: 90 });
  row('C', 'C 0805', { x: 66, y: 48.8 }, { x: 4, y: 0 }, same('22u', 3), { side, turn: 90 });
  place('L', 'Inductor 7x7', 70, 40, { side, value: '470n', more: { massG: 1.1, padAreaMm2: 26 } });
}

function underMemories({ row }: Bench): void {
  const side = 'bottom';
  for (const y of [66.5, 50.5]) {
    row('C', 'C 0402', { x: 89.6, y: y - 3.6 }, { x: 0, y: 3.6 }, same('100n', 3), { side });
    row('C', 'C 0402', { x: 92.4, y: y - 3.6 }, { x: 0, y: 3.6 }, ['1u', '100n', '1u'], { side });
  }
  row('R', 'R 0402', { x: 86, y: 57 }, { x: 1.6, y: 0 }, ['240R', '240R'], { side, turn: 90 });
  row('C', 'C 0603', { x: 96.6, y: 58.5 }, { x: 3, y: 0 }, ['10u', '10u'], { side, turn: 90 });
}

function smallLogic({ place, row }: Bench): void {
  const side = 'bottom';
  place('U', 'TSSOP-20', 126, 30, { side, value: 'Level shifter' });
  place('U', 'SOT-23-5', 43, 49.5, { side, value: 'EEPROM 16k' });
  place('U', 'MSOP-8', 91, 38, { side, value: 'Temperature sensor' });
  place('U', 'SOT-23-5', 57, 62, { side, value: 'Supervisor' });
  row('C', 'C 0402', { x: 46.4, y: 49.5 }, { x: 0, y: 1.5 }, ['100n'], { side });
  row('R', 'R 0402', { x: 47.4, y: 59 }, { x: 0, y: 1.5 }, ['10k', '4k7'], { side });
  place('R', 'R 0402', 47.4, 62, { side, value: '0R', fitted: false });
}

function testPoints({ row }: Bench): void {
  const side = 'bottom';
  row('TP', 'Test point 1 mm', { x: 58, y: 76 }, { x: 2.54, y: 0 }, ['3V3', '1V8', '1V1', 'CORE', 'RST', 'GND'], {
    side,
  });
  row('TP', 'Test point 1 mm', { x: 56.5, y: 28 }, { x: 2.54, y: 0 }, ['24V', 'GND'], { side });
}
