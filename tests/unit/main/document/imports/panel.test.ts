import { expect, test } from 'vitest';
import { type ImportChoices, importBoard } from '../../../../../main/document/imports/import-board.ts';
import { turnPoint } from '../../../../../main/document/imports/plane.ts';

/** An invented board of 40 x 30 mm: reference, x, y, rotation. */
const PARTS = [
  ['R1', 5, 5, 0],
  ['R2', 12, 7, 90],
  ['C1', 20, 25, 180],
  ['U1', 30, 12, 45],
  ['U2', 33, 21.5, 270],
] as const;

interface Image {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

/** Two boards side by side and two above, the last one turned by half a turn. */
const IMAGES: readonly Image[] = [
  { x: 0, y: 0, turn: 0 },
  { x: 45, y: 0, turn: 0 },
  { x: 0, y: 35, turn: 0 },
  { x: 85, y: 65, turn: 180 },
];

const placed = ({ x, y, turn }: Image, at: { x: number; y: number }) => {
  const turned = turnPoint(at, turn);
  return { x: x + turned.x, y: y + turned.y };
};

/** Rows in a mixed order: the images of one reference do not come in the order of those of another. */
function placements(images: readonly Image[], extra: string[] = []): string {
  const rows = PARTS.flatMap(([refdes, x, y, rotation], index) =>
    images.map((_, step) => {
      const image = images[(index === 0 ? step : step + index) % images.length];
      const at = placed(image, { x, y });
      return `${refdes},${at.x},${at.y},${(rotation + image.turn) % 360},top`;
    }),
  );
  return ['Designator,X (mm),Y (mm),Rotation,Side', ...rows, ...extra].join('\n');
}

/** Every board's border and a frame round them all. */
function profile(images: readonly Image[]): string {
  const loop = (points: { x: number; y: number }[]) =>
    [...points, points[0]].map(
      ({ x, y }, index) => `X${Math.round(x * 1e6)}Y${Math.round(y * 1e6)}D0${index === 0 ? 2 : 1}*`,
    );
  const corners = (width: number, height: number) => [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  const boards = images.flatMap((image) => loop(corners(40, 30).map((corner) => placed(image, corner))));
  const frame = loop(corners(99, 79).map(({ x, y }) => ({ x: x - 7, y: y - 7 })));
  return [
    '%TF.FileFunction,Profile,NP*%',
    '%FSLAX46Y46*%',
    '%MOMM*%',
    '%ADD10C,0.1*%',
    'D10*',
    ...boards,
    ...frame,
    'M02*',
  ].join('\n');
}

function boardOf(choices: ImportChoices, images = IMAGES, extra: string[] = []) {
  const text = (name: string, content: string) => ({ name, bytes: new TextEncoder().encode(content) });
  const result = importBoard([text('pos.csv', placements(images, extra)), text('edge.gbr', profile(images))], choices);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

test('all images unless said otherwise, in the frame, and the choice is told', () => {
  const { board, report } = boardOf({});
  expect(board.parts).toHaveLength(20);
  expect(report.outline.lengthMm).toBeCloseTo(99, 6);
  expect(report.panel).toEqual({ images: 4, taken: 'all', leftOut: 0, strays: [] });
  expect(report.notes).toContainEqual({ weight: 'warn', code: 'panel-all', detail: { images: 4 } });
  expect(report.notes.map(({ code }) => code)).not.toContain('reference-twice');
});

test('one image: its own parts and its own border, whatever the order of rows and the turn of images', () => {
  for (const images of [IMAGES, IMAGES.slice(0, 2), [IMAGES[3], IMAGES[0]]]) {
    const { board, report } = boardOf({ panel: 'one' }, images);
    expect(report.panel).toMatchObject({ images: images.length, taken: 'one', leftOut: 5 * (images.length - 1) });
    expect([report.outline.lengthMm, report.outline.widthMm].map(Math.round)).toEqual([40, 30]);
    const turned = images[0].turn === 180;
    for (const [refdes, x, y, rotation] of PARTS) {
      const part = board.parts.find((one) => one.refdes === refdes);
      expect(part?.x).toBeCloseTo(turned ? 40 - x : x, 3);
      expect(part?.y).toBeCloseTo(turned ? 30 - y : y, 3);
      expect(part?.turn).toBe((rotation + images[0].turn) % 360);
    }
  }
});

test('marks of the panel stand once: told and left out with one image, kept with all', () => {
  const extra = ['FIDP1,-3,-3,0,top', 'FIDB1,15,15,0,top'];
  expect(boardOf({}, IMAGES, extra).board.parts).toHaveLength(22);
  const { board, report } = boardOf({ panel: 'one' }, IMAGES, extra);
  expect(board.parts.map(({ refdes }) => refdes).sort()).toEqual(['C1', 'FIDB1', 'R1', 'R2', 'U1', 'U2']);
  expect(report.panel?.strays).toEqual(['FIDP1']);
});

test('a board with one double reference is no panel: the choice changes nothing', () => {
  const one = [IMAGES[0]];
  const extra = ['R1,9,9,0,top'];
  const { board, report } = boardOf({ panel: 'one' }, one, extra);
  expect(report.panel).toBeNull();
  expect(board.parts).toHaveLength(6);
  expect(report.notes.map(({ code }) => code)).toContain('reference-twice');
});
