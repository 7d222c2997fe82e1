import type { Board } from '../../shared-types/board.ts';
import { BOARD_FORMAT, BOARD_VERSION } from '../../shared-types/format-version.ts';
import type { Contour, Side } from '../../shared-types/geometry.ts';
import { findPackage } from '../../shared-types/library/packages.ts';
import { type Bench, cornerHoles, createBench, invented, type PlaceOptions, QUARTER, round } from './bench.ts';
import { createRandom, type Random } from './random.ts';

/** What a random board is built with: `left` counts down to the wanted number of parts. */
type Builder = { bench: Bench; random: Random; length: number; width: number; left: number };

/** Letters and values of what stands beside an integrated circuit. */
const SMALL = [
  ['C', 'C 0402', ['100n', '1u', '10n', '4u7']],
  ['R', 'R 0402', ['10k', '4k7', '1k', '33R', '0R']],
  ['C', 'C 0603', ['1u', '10u', '2u2']],
  ['R', 'R 0603', ['100k', '1k', '10R']],
  ['L', 'L 0603', ['600R', '220R']],
] as const;
type SmallKind = (typeof SMALL)[number];

const CIRCUITS = [
  'SOIC-8',
  'SOT-23-5',
  'SOT-23-6',
  'TSSOP-16',
  'TSSOP-20',
  'MSOP-8',
  'QFN-16 3x3',
  'QFN-32 5x5',
  'QFN-48 7x7',
  'SOIC-16W',
  'LQFP-64 10x10',
  'BGA 8x8 0.8',
];
const LARGE = [
  ['C', 'Electrolytic 6.3x7.7', '100u'],
  ['C', 'Electrolytic 8x10.2', '220u'],
  ['C', 'Electrolytic 10x10.2', '470u'],
  ['C', 'Tantalum 3528-21', '47u'],
  ['C', 'C 1210', '22u'],
  ['L', 'Inductor 5x5', '4u7'],
  ['L', 'Inductor 7x7', '10u'],
  ['Y', 'Crystal 3.2x2.5', '25M'],
  ['D', 'SMB', 'Surge'],
  ['SW', 'Tact switch 4x3', 'Button'],
] as const;
const AT_THE_EDGE = [
  'USB-C receptacle',
  'Terminal block 3 x 5.08',
  'Terminal block 2 x 5.08',
  'Wire connector 4 x 2.0',
  'RJ45 with magnetics',
  'Coaxial receptacle, edge',
];

const tenth = (mm: number): number => Math.round(mm * 10) / 10;

/** Places one part if there is room and one is still wanted; counts it. */
function tryPlace(
  builder: Builder,
  letters: string,
  pack: string,
  x: number,
  y: number,
  options: PlaceOptions,
): boolean {
  const { bench } = builder;
  if (builder.left <= 0 || !bench.fits(pack, x, y, options)) return false;
  bench.place(letters, pack, x, y, options);
  builder.left--;
  return true;
}

const halfOf = (pack: string, turn: number): { x: number; y: number } => {
  const one = findPackage(pack)!;
  const lies = turn % 180 === 0;
  return { x: (lies ? one.lengthMm : one.widthMm) / 2, y: (lies ? one.widthMm : one.lengthMm) / 2 };
};

/** A row of chips along each of the four edges of a body, ends outwards. */
function ringOf(
  builder: Builder,
  at: { x: number; y: number },
  half: { x: number; y: number },
  gap: number,
  most: number,
  side: Side,
  kinds: readonly SmallKind[] = SMALL,
): void {
  const { random } = builder;
  let placed = 0;
  for (const [dx, dy] of [
    [0, 1],
    [0, -1],
    [-1, 0],
    [1, 0],
  ]) {
    const [letters, pack, values] = random.pick(kinds);
    const chip = findPackage(pack)!;
    const reach = dy === 0 ? half.y : half.x;
    const pitch = chip.widthMm + random.between(0.5, 1.1);
    const count = Math.min(Math.floor((2 * reach) / pitch), most - placed, random.whole(2, 12));
    for (let index = 0; index < count; index++) {
      const along = (index - (count - 1) / 2) * pitch;
      const out = gap + chip.lengthMm / 2;
      const x = tenth(at.x + (dx === 0 ? along : dx * (half.x + out)));
      const y = tenth(at.y + (dy === 0 ? along : dy * (half.y + out)));
      const options = { side, turn: dx === 0 ? 90 : 0, value: random.pick(values), fitted: !random.chance(0.02) };
      if (tryPlace(builder, letters, pack, x, y, options)) placed++;
    }
  }
}

/** The array to exchange, its memories where the board is large enough, and the parts round and under it. */
function placeTarget(builder: Builder, partCount: number): void {
  const { bench, random, length, width } = builder;
  const pack = partCount < 60 ? 'BGA 10x10 0.8' : partCount < 900 ? 'BGA 17x17 0.8' : 'BGA 27x27 1.0';
  const half = halfOf(pack, 0);
  const at = { x: tenth(length * random.between(0.42, 0.5)), y: tenth(width * random.between(0.45, 0.6)) };
  tryPlace(builder, 'U', pack, at.x, at.y, { value: 'Target array' });
  const memories = partCount < 80 ? 0 : 2;
  for (let index = 0; index < memories; index++)
    tryPlace(builder, 'U', 'BGA 9x13 0.8', tenth(at.x + half.x + 11.5), tenth(at.y - 8 + 16 * index), {
      value: 'Memory',
    });
  ringOf(builder, at, half, 1, Math.ceil(partCount * 0.15), 'top', [SMALL[0], SMALL[2]]);
  const rows = Math.floor(half.y / 2.2);
  for (let row = -rows; row <= rows; row += 2)
    for (let column = -rows; column <= rows; column += 2) {
      if (builder.left < partCount * 0.7) return;
      const [x, y] = [tenth(at.x + column * 1.1), tenth(at.y + row * 1.1)];
      tryPlace(builder, 'C', 'C 0402', x, y, {
        side: 'bottom',
        turn: 90,
        value: bench.parts.length % 3 ? '100n' : '1u',
      });
    }
}

/** Connectors along the edges, mouths outwards, a little over the edge. */
function placeConnectors(builder: Builder, partCount: number): void {
  const { random, length, width } = builder;
  const wanted = Math.min(14, Math.floor(partCount / 18));
  for (let attempt = 0, placed = 0; attempt < 200 && placed < wanted; attempt++) {
    const pack = random.pick(AT_THE_EDGE);
    const turn = random.pick([0, 90, 180, 270]);
    const half = halfOf(pack, turn);
    const along = random.between(9, (turn % 180 === 0 ? length : width) - 9);
    const [x, y] =
      turn === 0
        ? [along, half.y - 0.4]
        : turn === 180
          ? [along, width - half.y + 0.4]
          : turn === 90
            ? [length - half.x + 0.4, along]
            : [half.x - 0.4, along];
    const middle = turn % 180 === 0 ? x : y;
    const reach = turn % 180 === 0 ? half.x : half.y;
    const end = turn % 180 === 0 ? length : width;
    if (middle - reach < 7 || middle + reach > end - 7) continue;
    if (
      tryPlace(builder, 'J', pack, round(x), round(y), {
        turn,
        overEdge: true,
        throughHole: pack !== 'USB-C receptacle',
      })
    )
      placed++;
  }
}

/** A circuit with its small parts round it, a large part, or a row of small ones, at a free place. */
function placeGroup(builder: Builder): boolean {
  const { random, length, width } = builder;
  const side: Side = random.chance(0.7) ? 'top' : 'bottom';
  const turn = random.pick([0, 90, 180, 270]);
  const x = Math.round(random.between(4, length - 4) * 2) / 2;
  const y = Math.round(random.between(4, width - 4) * 2) / 2;
  if (random.chance(0.55)) {
    const pack = random.pick(CIRCUITS);
    if (!tryPlace(builder, 'U', pack, x, y, { side, turn, value: 'Circuit' })) return false;
    const half = halfOf(pack, turn);
    ringOf(builder, { x, y }, half, 1.6, random.whole(3, 10), side);
    return true;
  }
  if (random.chance(0.4) && side === 'top') {
    const [letters, pack, value] = random.pick(LARGE);
    return tryPlace(builder, letters, pack, x, y, { side, turn, value });
  }
  return placeRow(builder, x, y, side);
}

function placeRow(builder: Builder, x: number, y: number, side: Side): boolean {
  const { random } = builder;
  const [letters, pack, values] = random.pick(SMALL);
  const pitch = findPackage(pack)!.widthMm + random.pick([0.6, 0.8, 1.2]);
  const upright = random.chance(0.5);
  const count = random.whole(2, 8);
  let any = false;
  for (let index = 0; index < count; index++) {
    const step = index * pitch;
    const place = { x: tenth(upright ? x + step : x), y: tenth(upright ? y : y + step) };
    const options = { side, turn: upright ? 90 : 0, value: random.pick(values) };
    any = tryPlace(builder, letters, pack, place.x, place.y, options) || any;
  }
  return any;
}

export function outlineOf(length: number, width: number): Contour {
  const radius = 3;
  return [
    { x: radius, y: 0 },
    { x: length - radius, y: 0, bulge: QUARTER },
    { x: length, y: radius },
    { x: length, y: width - radius, bulge: QUARTER },
    { x: length - radius, y: width },
    { x: radius, y: width, bulge: QUARTER },
    { x: 0, y: width - radius },
    { x: 0, y: radius, bulge: QUARTER },
  ];
}

/**
 * Fills what room is left with `count` parts of ordinary circuits, by chance: circuits with small parts round them, rows,
 * large parts; connectors stay where they were put. Throws when they find no room.
 */
export function fillByChance(
  bench: Bench,
  random: Random,
  board: { length: number; width: number },
  count: number,
): void {
  const builder: Builder = { bench, random, ...board, left: count };
  for (let attempt = 0; builder.left > 0; attempt++) {
    if (attempt > 400 * count) throw new Error(`${builder.left} of ${count} parts found no room.`);
    placeGroup(builder);
  }
}

/**
 * A board that nobody drew: `partCount` parts on both sides, an array to exchange ('U1') with bypass parts round and
 * under it, connectors at the edges, circuits with their small parts. The same seed gives the same board.
 * Throws when the parts do not fit, which the size of the board prevents.
 */
export function randomBoard(seed: number, partCount: number): Board {
  const random = createRandom(seed);
  const area = 1600 + 52 * Math.min(partCount, 300) + 16 * Math.max(0, partCount - 300);
  const width = Math.round(Math.sqrt(area / random.between(1.25, 1.7)));
  const length = Math.round(area / width);
  const outline = outlineOf(length, width);
  const cutouts = cornerHoles(length, width, 4, 1.6);
  const bench = createBench(outline, cutouts, {});
  const builder: Builder = { bench, random, length, width, left: partCount };
  placeTarget(builder, partCount);
  placeConnectors(builder, partCount);
  fillByChance(bench, random, builder, builder.left);
  const layer = (kind: 'signal' | 'plane') => ({ kind, copperUm: 35 });
  return {
    format: BOARD_FORMAT,
    version: BOARD_VERSION,
    name: `random-${seed}-${partCount}`,
    revision: '',
    outline,
    cutouts,
    laminate: {
      thicknessMm: 1.6,
      layers: [layer('signal'), layer('plane'), layer('plane'), layer('signal')],
      layersKnown: true,
    },
    parts: bench.parts,
    fiducials: [],
    covers: [],
    photos: [],
    straps: [],
    packages: [],
    source: invented(`made by chance, seed ${seed}`),
  };
}
