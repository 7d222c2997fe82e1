import type { Bench, OwnPackage } from '../bench.ts';

const OPTO: OwnPackage = {
  name: 'SO-4 optocoupler',
  lengthMm: 3.6,
  widthMm: 4.4,
  heightMm: 2.1,
  classId: 'optocoupler',
  pinCount: 4,
};
const FIELD_MODULE: OwnPackage = {
  name: 'Field-bus module 32x22',
  lengthMm: 32,
  widthMm: 22,
  heightMm: 9,
  classId: 'module-on-connector',
};

/** Everything that goes out into the greenhouse: relays, inputs, serial bus, module, clock cell. */
export function placeField(bench: Bench): void {
  placeRelays(bench);
  placeInputs(bench);
  placeAnalogue(bench);
  placeSerial(bench);
  placeModuleAndClock(bench);
}

function placeRelays({ place }: Bench): void {
  ['Vent relay', 'Pump relay'].forEach((value, index) => {
    const x = 18 + index * 22;
    place(`J${6 + index}`, 'Terminal block 3 x 5.08', x, 3.7, {
      value: value.split(' ')[0],
      overEdge: true,
      throughHole: true,
    });
    place('K', 'Relay, power', x, 22, { value, throughHole: true });
    place('D', 'SOD-123', x - 6, 33, { value: 'Free-wheel' });
    place('Q', 'SOT-23', x, 33.4, { value: 'N 60V' });
    place('R', 'R 0603', x + 3.8, 33.4, { turn: 90, value: '1k' });
    place('D', 'LED 0603', x + 7, 33.4, { turn: 90, value: 'yellow' });
  });
}

function placeInputs({ place, row }: Bench): void {
  place('J9', 'Terminal block 4 x 5.08', 3.7, 76, {
    turn: 270,
    value: 'Door contacts',
    overEdge: true,
    throughHole: true,
  });
  for (let index = 0; index < 4; index++) {
    const y = 68.4 + index * 5;
    place('R', 'R 1206', 11, y, { value: '2k2' });
    place('U', OPTO, 18.5, y, { turn: 90, value: 'Optocoupler' });
  }
  place('RN', 'RN 4x0603', 24.6, 76, { turn: 90, value: '4x4k7' });
  place('J10', 'Card socket micro', 7, 52, { turn: 270, value: 'Card', overEdge: true });
  place('RN', 'RN 4x0402', 16, 50, { turn: 90, value: '4x47k' });
  row('C', 'C 0603', { x: 18.4, y: 50 }, { x: 0, y: 2.4 }, ['10u', '100n'], { turn: 90 });
  place('U', 'SOIC-16W', 28, 55, { turn: 90, value: 'Isolated bus driver' });
  place('T', 'Choke 4-line 12x9', 28, 42.5, { value: 'Isolated supply', more: { massG: 1.4 } });
  row('C', 'C 0603', { x: 34.4, y: 50 }, { x: 0, y: 2.6 }, ['100n', '10u'], { turn: 90 });
  place('J11', 'Pin header 2x05 1.27', 47, 39.6, { turn: 90, value: 'Debug', throughHole: true });
}

function placeAnalogue({ place, row }: Bench): void {
  place('J12', 'Terminal block 4 x 5.08', 127, 3.7, { value: 'Probes', overEdge: true, throughHole: true });
  for (let index = 0; index < 4; index++) {
    const x = 119.5 + index * 5.08;
    place('R', 'R 0603', x, 11, { value: '249R' });
    place('C', 'C 0603', x, 12.9, { value: '10n' });
  }
  row('D', 'SOT-23', { x: 122, y: 17 }, { x: 10.2, y: 0 }, ['Clamp 5 V', 'Clamp 5 V'], {});
  place('U', 'TSSOP-14', 127, 24, { value: 'Op-amp x4' });
  place('C', 'C 0402', 131, 24, { turn: 90, value: '100n' });
  place('U', 'TSSOP-20', 128, 33.6, { value: 'HG-AD8 converter' });
  row('C', 'C 0402', { x: 122.8, y: 32.8 }, { x: 0, y: 1.6 }, ['100n', '1u'], {});
  place('U', 'SOT-23', 138.6, 33.6, { value: 'Reference 2.5 V' });
  place('C', 'C 0805', 142.4, 33.6, { turn: 90, value: '10u' });
}

function placeSerial({ place, row }: Bench): void {
  place('J13', 'Terminal block 3 x 5.08', 91.5, 3.7, { value: 'Serial bus', overEdge: true, throughHole: true });
  place('U', 'SOIC-8', 101, 12, { turn: 90, value: 'Bus transceiver' });
  place('D', 'SOT-23', 106.6, 11, { value: 'Bus clamp' });
  row('R', 'R 0603', { x: 110.4, y: 8.8 }, { x: 0, y: 1.9 }, ['120R', '680R'], {});
  place('R', 'R 0603', 110.4, 12.6, { value: '10R', fitted: false });
  place('C', 'C 0402', 101, 7.4, { value: '100n' });
}

function placeModuleAndClock({ place, row }: Bench): void {
  place('A1', FIELD_MODULE, 129, 54, { value: 'Field-bus module' });
  row('C', 'C 0805', { x: 108.4, y: 52 }, { x: 0, y: 3.6 }, ['22u', '10u'], { turn: 90 });
  place('RN', 'RN 4x0402', 111.2, 54, { turn: 90, value: '4x33' });
  place('U', 'SOT-23-5', 103, 58, { value: 'Module supply' });
  place('BT1', 'Coin holder 20 mm', 106, 31, { value: 'CR2032, clock', throughHole: true });
  place('U', 'MSOP-8', 103.6, 46, { value: 'Clock' });
  place('Y', 'Crystal 3.2x1.5', 99, 44.4, { turn: 90, value: '32.768k' });
  place('C', 'C 0402', 107.6, 46, { turn: 90, value: '100n' });
}
