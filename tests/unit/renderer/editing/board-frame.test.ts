import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Frame, lowerLeft, moveOrigin, placeBoard, turnBoard } from '../../../../renderer/editing/board-frame.ts';
import { ownToBoard } from '../../../../shared-types/board.ts';
import { documentSchema } from '../../../../shared-types/contract.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { startingSegments } from '../../../../shared-types/rules/new-plan.ts';
import { anyCommand, type Command } from './random-commands.ts';
import { smallDocument } from './sample-document.ts';

/** A document in which everything that can have a place has one. */
function fullDocument(): TicketDocument {
  const start = smallDocument();
  const pair = (id: string, x: number, y: number) => ({
    id,
    photo: { x: 100 * x, y: 90 * y },
    board: { x, y },
    anchor: 'free' as const,
    refdes: null,
  });
  return {
    board: {
      ...start.board,
      outline: [
        { x: 0, y: 0 },
        { x: 80, y: 0, bulge: 0.2 },
        { x: 80, y: 60 },
        { x: 0, y: 60, bulge: -0.3 },
      ],
      cutouts: [
        [
          { x: 20, y: 20, bulge: 1 },
          { x: 24, y: 20, bulge: 1 },
        ],
      ],
      parts: start.board.parts.map((part, index) => ({ ...part, turn: 15 * index, pin1: { x: 0.5, y: -0.25 } })),
      fiducials: [{ id: 'F1', side: 'top', x: 3, y: 4 }],
      covers: [
        {
          id: 'K1',
          kind: 'can',
          side: 'top',
          x: 40,
          y: 30,
          lengthMm: 20,
          widthMm: 10,
          turn: 30,
          heightMm: 3,
          sheetMm: 0.2,
          material: 'tinned-steel',
          fixing: 'soldered',
        },
      ],
      photos: [
        {
          id: 'photo-1',
          side: 'top',
          name: 'a.jpg',
          sha256: 'a'.repeat(64),
          mediaType: 'image/jpeg',
          widthPx: 100,
          heightPx: 80,
          orientation: 1,
          working: { sha256: 'a'.repeat(64), mediaType: 'image/jpeg', widthPx: 100, heightPx: 80 },
          pairs: [pair('p1', 1, 2), pair('p2', 70, 50)],
          fit: null,
          opacity: 1,
          shown: true,
        },
      ],
    },
    plan: {
      ...start.plan,
      heatRuns: [
        {
          id: 'run-9',
          name: 'Off',
          kind: 'removal',
          side: 'top',
          siteIds: [],
          segments: startingSegments('removal', null).map((segment) => ({
            ...segment,
            nozzleCentre: { x: 31, y: 22 },
          })),
        },
      ],
      station: {
        ...start.plan.station,
        nozzle: {
          kind: 'rectangular',
          lengthMm: 10,
          widthMm: 5,
          turnDeg: 20,
          standOffMm: 5,
          sweepRadiusMm: 0,
          tiltDeg: 10,
          headingDeg: 40,
        },
        preheater: { ...start.plan.station.preheater, centre: { x: 30, y: 20 }, sensor: { x: 50, y: 10 } },
      },
      tags: [
        {
          id: 'tag-1',
          kind: 'watchPoint',
          order: null,
          note: '',
          name: 'W1',
          side: 'top',
          x: 12,
          y: 13,
          refdes: null,
        },
      ],
    },
  };
}

/** Every object with an x and a y, by its path; own axes of a part and pixels of a photo are no places on the board. */
function places(value: unknown, path = ''): [string, number, number][] {
  if (typeof value !== 'object' || value === null) return [];
  const { x, y } = value as { x?: unknown; y?: unknown };
  const own: [string, number, number][] =
    typeof x === 'number' && typeof y === 'number' && !/\.pin1$|\.photo$/.test(path) ? [[path, x, y]] : [];
  return [...own, ...Object.entries(value).flatMap(([name, inner]) => places(inner, `${path}.${name}`))];
}

const expectNear = (actual: unknown, expected: unknown) => {
  const rounded = (value: unknown): unknown =>
    JSON.parse(JSON.stringify(value, (_, one) => (typeof one === 'number' ? Math.round(one * 1e9) / 1e9 || 0 : one)));
  expect(rounded(actual)).toEqual(rounded(expected));
};

const frames: fc.Arbitrary<Frame> = fc.record({
  mirror: fc.boolean(),
  quarters: fc.constantFrom(0, 1, 2, 3),
  by: fc.record({ x: fc.integer({ min: -500, max: 500 }), y: fc.integer({ min: -500, max: 500 }) }),
});

test('every place goes along, and all distances stay what they were', () => {
  fc.assert(
    fc.property(frames, fc.array(anyCommand, { maxLength: 10 }), (frame, commands) => {
      const start = commands.reduce((document, command: Command) => command(document), fullDocument());
      const next = placeBoard(start, frame);
      const [before, after] = [places(start), places(next)];
      expect(after.map(([path]) => path)).toEqual(before.map(([path]) => path));
      const [, x0, y0] = before[0];
      const [, u0, v0] = after[0];
      for (const [index, [path, x, y]] of before.entries()) {
        const [, u, v] = after[index];
        expect(Math.hypot(u - u0, v - v0), path).toBeCloseTo(Math.hypot(x - x0, y - y0), 9);
      }
      expect(documentSchema.safeParse(next).error?.issues ?? []).toEqual([]);
    }),
    { numRuns: 100 },
  );
});

test('mirrored twice, turned four times, moved there and back: nothing has changed', () => {
  const start = fullDocument();
  const mirror = { mirror: true, quarters: 0 } as const;
  const turn = { mirror: false, quarters: 1 } as const;
  expectNear(turnBoard(turnBoard(start, mirror), mirror), start);
  const back = [1, 2, 3, 4].reduce((document) => turnBoard(document, turn), start);
  const whole = (value: TicketDocument) =>
    JSON.parse(JSON.stringify(value), (name, one) =>
      /^(turn|turnDeg|headingDeg)$/.test(name) ? ((one % 360) + 360) % 360 : one,
    );
  expectNear(whole(back), whole(start));
  expectNear(moveOrigin(moveOrigin(start, { x: 12.5, y: -3 }), { x: -12.5, y: 3 }), start);
});

test('the lower left corner goes to 0, 0 with everything else; pin 1 and the noses of the parts too', () => {
  const start = moveOrigin(fullDocument(), { x: -7, y: 9 });
  const next = moveOrigin(start, lowerLeft(start.board));
  const corner = lowerLeft(next.board);
  expect(corner.x).toBeCloseTo(0, 12);
  expect(corner.y).toBeCloseTo(0, 12);
  for (const change of [
    { mirror: true, quarters: 0 },
    { mirror: true, quarters: 1 },
    { mirror: false, quarters: 3 },
  ] as const) {
    const changed = turnBoard(next, change);
    const kept = lowerLeft(changed.board);
    expect(kept.x).toBeCloseTo(0, 9);
    expect(kept.y).toBeCloseTo(0, 9);
    // The way from one part's pin 1 to another's keeps its length: true only when each pin went with its board point.
    const pins = (document: TicketDocument) =>
      document.board.parts.map((part) => ownToBoard(part, part.pin1 ?? { x: 0, y: 0 }));
    const [before, after] = [pins(next), pins(changed)];
    for (let i = 1; i < before.length; i++)
      expect(Math.hypot(after[i].x - after[0].x, after[i].y - after[0].y)).toBeCloseTo(
        Math.hypot(before[i].x - before[0].x, before[i].y - before[0].y),
        9,
      );
  }
});

test('a lean of the nozzle to the right leans to the left in the mirror and up after a quarter', () => {
  const start = fullDocument();
  const heading = ({ plan: { station } }: TicketDocument) =>
    station.nozzle.kind === 'infrared' ? null : station.nozzle.headingDeg;
  expect(heading(turnBoard(start, { mirror: true, quarters: 0 }))).toBe(140);
  expect(heading(turnBoard(start, { mirror: false, quarters: 1 }))).toBe(130);
  const zone = turnBoard(start, { mirror: false, quarters: 1 }).plan.station.preheater;
  expect([zone.lengthMm, zone.widthMm]).toEqual([
    start.plan.station.preheater.widthMm,
    start.plan.station.preheater.lengthMm,
  ]);
});
