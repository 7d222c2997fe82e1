import type { Bench } from '../bench.ts';

/** Ethernet, USB, lamps and buttons along the upper edge. */
export function placeNetwork(bench: Bench): void {
  placeEthernet(bench);
  placeUsb(bench);
  placeLampsAndButtons(bench);
}

function placeEthernet({ place, row }: Bench): void {
  place('J1', 'RJ45 with magnetics', 36, 90.2, { value: 'Ethernet', overEdge: true, throughHole: true });
  place('U8', 'QFN-32 5x5', 50, 80.5, { value: 'HG-PHY1 Ethernet' });
  place('Y', 'Crystal 3.2x2.5', 50, 74.4, { value: '25M' });
  row('C', 'C 0402', { x: 47, y: 73.6 }, { x: 0, y: 1.6 }, ['18p', '18p'], { turn: 90 });
  row('C', 'C 0402', { x: 54.4, y: 78.8 }, { x: 0, y: 1.7 }, ['100n', '1u', '100n'], {});
  place('RN', 'RN 4x0402', 50, 84.8, { value: '4x49R9' });
  row('R', 'R 0402', { x: 45.6, y: 79 }, { x: 0, y: 1.7 }, ['6k49', '10k'], {});
  place('L', 'L 0603', 46, 87.2, { turn: 90, value: '600R' });
  place('C', 'C 0603', 48, 87.2, { turn: 90, value: '10u' });
  place('C', 'C 1812', 25.8, 92.5, { turn: 90, value: '1n 2kV' });
  place('R', 'R 1206', 25.8, 87.6, { turn: 90, value: '1M' });
}

function placeUsb({ place, row }: Bench): void {
  place('J2', 'USB-A receptacle', 63, 93.6, { value: 'USB host', overEdge: true, throughHole: true });
  place('J3', 'USB-C receptacle', 78, 96.8, { value: 'USB device', overEdge: true });
  place('U9', 'SOT-23-6', 63, 83.6, { value: 'ESD array' });
  place('U10', 'SOT-23-5', 68.5, 83.6, { turn: 90, value: 'USB switch' });
  place('U11', 'SOT-23-6', 77, 89.4, { value: 'ESD array' });
  row('C', 'C 0603', { x: 72, y: 84.6 }, { x: 0, y: -2 }, ['10u', '100n'], {});
  row('R', 'R 0402', { x: 81.2, y: 91 }, { x: 0, y: -1.5 }, ['5k1', '5k1'], {});
  row('R', 'R 0402', { x: 62.2, y: 80.4 }, { x: 1.6, y: 0 }, ['22R', '22R'], { turn: 90 });
  place('L', 'L 0805', 58, 83.4, { turn: 90, value: '220R' });
}

function placeLampsAndButtons({ place, row }: Bench): void {
  const colours = ['green', 'green', 'yellow', 'red'];
  row('D', 'LED 0603', { x: 86, y: 98 }, { x: 2.6, y: 0 }, colours, { turn: 90 });
  place('RN', 'RN 4x0603', 89.9, 95.2, { value: '4x680' });
  row('SW', 'Tact switch 6x6', { x: 13.5, y: 95.4 }, { x: 7.2, y: 0 }, ['Reset', 'Set'], {});
}
