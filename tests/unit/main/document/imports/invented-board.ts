import type { GivenFile } from '../../../../../main/document/imports/import-board.ts';
import { type Point, turnPoint } from '../../../../../main/document/imports/plane.ts';

/** An invented board as its files: a profile, two copper layers with X2 pins, a placement table. */
export interface InventedPart {
  readonly refdes: string;
  readonly packageName: string;
  readonly side: 'top' | 'bottom';
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  /** Pads in own axes: pin, x, y, width, height. */
  readonly pads: readonly (readonly [string, number, number, number, number])[];
  readonly placed?: boolean;
}

/** Land patterns in own axes: a chip, and five legs. */
export const CHIP = [
  ['1', -0.5, 0, 0.5, 0.6],
  ['2', 0.5, 0, 0.5, 0.6],
] as const;
export const FIVE = [
  ['1', -0.95, 1.3, 0.6, 1],
  ['2', 0, 1.3, 0.6, 1],
  ['3', 0.95, 1.3, 0.6, 1],
  ['4', 0.95, -1.3, 0.6, 1],
  ['5', -0.95, -1.3, 0.6, 1],
] as const;

const ARRAY = Array.from({ length: 100 }, (_, index) => {
  const [row, column] = [Math.floor(index / 10), index % 10];
  return [`${'ABCDEFGHJK'[row]}${column + 1}`, (column - 4.5) * 0.8, (4.5 - row) * 0.8, 0.4, 0.4] as const;
});

export const INVENTED_PARTS: readonly InventedPart[] = [
  ...Array.from(
    { length: 12 },
    (_, index): InventedPart => ({
      refdes: `C${index + 1}`,
      packageName: 'C_0402_INV',
      side: index % 2 === 0 ? 'top' : 'bottom',
      x: 6 + index * 3.7,
      y: 6 + (index % 5) * 2.3,
      turn: [0, 90, 180, 270][index % 4],
      pads: CHIP,
    }),
  ),
  ...Array.from(
    { length: 6 },
    (_, index): InventedPart => ({
      refdes: `U${index + 1}`,
      packageName: 'FIVELEG',
      side: index % 3 === 0 ? 'bottom' : 'top',
      x: 9 + index * 6.1,
      y: 24 + (index % 2) * 3,
      turn: [0, 90, 180, 270, 45, 22.5][index],
      pads: FIVE,
    }),
  ),
  { refdes: 'U9', packageName: 'MAKER-CORE-100', side: 'top', x: 45, y: 15, turn: 90, pads: ARRAY },
  { refdes: 'TP1', packageName: '', side: 'top', x: 4, y: 30, turn: 0, pads: [['1', 0, 0, 1, 1]], placed: false },
];

const micro = (mm: number) => Math.round(mm * 1e6);

function padLines(parts: readonly InventedPart[], origin: Point): string[] {
  const apertures: string[] = [];
  const flashes: string[] = [];
  for (const { refdes, side, x, y, turn, pads } of parts) {
    for (const [pin, ownX, ownY, width, height] of pads) {
      const corner = (sx: number, sy: number) => {
        const own = { x: (sx * width) / 2, y: (side === 'bottom' ? -sy : sy) * (height / 2) };
        const turned = turnPoint(own, turn);
        return `${turned.x.toFixed(6)}X${turned.y.toFixed(6)}`;
      };
      const code = 10 + apertures.length;
      apertures.push(`%ADD${code}PAD,${corner(-1, -1)}X${corner(1, -1)}X${corner(1, 1)}X${corner(-1, 1)}*%`);
      const at = turnPoint({ x: ownX, y: side === 'bottom' ? -ownY : ownY }, turn);
      const [px, py] = [micro(x + at.x + origin.x), micro(y + at.y + origin.y)];
      flashes.push(`%TO.P,${refdes},${pin}*%`, `D${code}*`, `X${px}Y${py}D03*`);
    }
  }
  return ['%TA.AperFunction,SMDPad,CuDef*%', ...apertures, '%TD*%', ...flashes];
}

function gerber(fileFunction: string, lines: readonly string[]): string {
  const macro = '%AMPAD*4,1,4,$1,$2,$3,$4,$5,$6,$7,$8,$1,$2,0*%';
  return [`%TF.FileFunction,${fileFunction}*%`, '%FSLAX46Y46*%', '%MOMM*%', 'G01*', macro, ...lines, 'M02*', ''].join(
    '\n',
  );
}

/** A 60 x 36 mm outline with one rounded corner (radius 5) and a slot. */
function profile(origin: Point): string {
  const at = (x: number, y: number) => `X${micro(x + origin.x)}Y${micro(y + origin.y)}`;
  const lines = [
    '%ADD10C,0.05*%',
    'D10*',
    `${at(0, 0)}D02*`,
    `${at(60, 0)}D01*`,
    `${at(60, 31)}D01*`,
    'G75*',
    'G03*',
    `${at(55, 36)}I-5000000J0D01*`,
    'G01*',
    `${at(0, 36)}D01*`,
    `${at(0, 0)}D01*`,
    `${at(20, 32)}D02*`,
    `${at(30, 32)}D01*`,
    `${at(30, 34)}D01*`,
    `${at(20, 34)}D01*`,
    `${at(20, 32)}D01*`,
  ];
  return gerber('Profile,NP', lines);
}

export interface InventedOptions {
  readonly parts?: readonly InventedPart[];
  /** Gerber coordinates of the board's lower left corner. */
  readonly origin?: Point;
  readonly write?: (part: InventedPart) => readonly [x: number, y: number, angle: number];
  readonly heading?: string;
}

const bytes = (text: string) => new TextEncoder().encode(text);

export function placementText({ parts = INVENTED_PARTS, write, heading }: InventedOptions = {}): string {
  const rows = parts
    .filter(({ placed }) => placed !== false)
    .map((part) => {
      const [x, y, angle] = write ? write(part) : [part.x, part.y, part.turn];
      return `${part.refdes},V-${part.refdes},${part.packageName},${x.toFixed(4)},${y.toFixed(4)},${angle},${part.side}`;
    });
  return [heading ?? 'Ref,Val,Package,PosX (mm),PosY (mm),Rot,Side', ...rows, ''].join('\n');
}

/** The files of the invented board. */
export function inventedFiles(options: InventedOptions = {}): GivenFile[] {
  const { parts = INVENTED_PARTS, origin = { x: 0, y: 0 } } = options;
  const side = (name: 'top' | 'bottom') =>
    padLines(
      parts.filter((part) => part.side === name),
      origin,
    );
  return [
    { name: 'invented-pos.csv', bytes: bytes(placementText(options)) },
    { name: 'invented-edge.gbr', bytes: bytes(profile(origin)) },
    { name: 'invented-1.gbr', bytes: bytes(gerber('Copper,L1,Top', side('top'))) },
    { name: 'invented-2.gbr', bytes: bytes(gerber('Copper,L4,Bot', side('bottom'))) },
  ];
}
