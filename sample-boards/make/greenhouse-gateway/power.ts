import type { Bench } from '../bench.ts';

/** Supply input, first converter, multi-channel converter beside the processor. */
export function placePower(bench: Bench): void {
  placeInput(bench);
  placeConverter(bench);
  placeManager(bench);
}

function placeInput({ place }: Bench): void {
  place('J8', 'Terminal block 2 x 5.08', 62, 3.7, { value: '24 V in', overEdge: true, throughHole: true });
  place('F', 'F 2512', 61, 9.9, { value: '2A' });
  place('D', 'SMC', 73, 5, { value: 'Surge 33 V' });
  place('D', 'SMB', 71, 11.2, { value: 'Schottky 60 V' });
  place('C', 'Electrolytic 10x10.2', 81.5, 14.4, { value: '220u 50V' });
  place('C', 'Electrolytic 8x10.2', 91.5, 13.4, { value: '100u 50V' });
}

function placeConverter({ place, row }: Bench): void {
  place('U6', 'SOIC-8', 61, 18, { turn: 90, value: 'HG-BK24 converter' });
  place('L', 'Inductor 10x10', 71, 21.5, { value: '22u', more: { massG: 2.1 } });
  row('C', 'C 1210', { x: 56.2, y: 15 }, { x: 0, y: 4.4 }, ['4u7 50V', '4u7 50V'], { turn: 90 });
  row('R', 'R 0603', { x: 58, y: 24 }, { x: 2.6, y: 0 }, ['100k', '19k1'], {});
  row('C', 'C 0603', { x: 58, y: 26 }, { x: 2.6, y: 0 }, ['100n', '2n2'], {});
  place('D', 'SMA', 60.6, 13.2, { value: 'Schottky 60 V' });
  row('C', 'C 1210', { x: 78.5, y: 22.5 }, { x: 3.6, y: 0 }, ['47u', '47u'], { turn: 90 });
  place('D', 'LED 0603', 55, 6.4, { turn: 90, value: 'green', fitted: true });
  place('R', 'R 0603', 55, 9.2, { turn: 90, value: '1k' });
}

/** Power manager of the processor: four converters with their inductors, and bulk parts. */
function placeManager({ place, row }: Bench): void {
  place('U7', 'QFN-48 7x7', 67, 36, { value: 'HG-PM8 power manager' });
  row('L', 'Inductor 4x4', { x: 58, y: 32.5 }, { x: 0, y: 6 }, ['1u', '1u'], { more: { massG: 0.16 } });
  row('L', 'Inductor 4x4', { x: 76, y: 32.5 }, { x: 0, y: 6 }, ['1u', '2u2'], { more: { massG: 0.16 } });
  row('C', 'C 0805', { x: 54.4, y: 33 }, { x: 0, y: 5 }, ['22u', '22u'], { turn: 90 });
  row('C', 'C 0805', { x: 79.8, y: 33 }, { x: 0, y: 5 }, ['22u', '22u'], { turn: 90 });
  row('C', 'C 0603', { x: 65, y: 30.7 }, { x: 4, y: 0 }, ['10u', '10u'], { turn: 90 });
  row('C', 'C 0402', { x: 62, y: 35 }, { x: 0, y: 2 }, ['100n', '1u'], {});
  row('C', 'C 0402', { x: 72, y: 35 }, { x: 0, y: 2 }, ['1u', '100n'], {});
  row('R', 'R 0402', { x: 64.5, y: 41.4 }, { x: 1.7, y: 0 }, ['10k', '4k7', '4k7', '100k'], { turn: 90 });
  row('C', 'Electrolytic 6.3x7.7', { x: 86, y: 31 }, { x: 0, y: 7.4 }, ['100u 10V', '100u 10V'], {});
  place('C', 'Tantalum 3528-21', 74.5, 43.4, { value: '100u 6V3' });
}
