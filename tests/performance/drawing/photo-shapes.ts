import { type Board, bodyOf, ownToBoard, type Part } from '../../../shared-types/board.ts';
import { flattenContour, type Point, rectangleCorners, type Side, turnVector } from '../../../shared-types/geometry.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import type { Space } from './camera.ts';

/** What the painter knows: filled polygons and lettering, in photo pixels, in the order of painting. */
export type PaintedShape =
  | { kind: 'fill'; colour: string; corners: Point[] }
  /** `along` and `up`: one mm of the lettering's line and of its height, as pixels. */
  | { kind: 'text'; colour: string; text: string; at: Point; along: Point; up: Point; mm: number };

type Seen = (at: Space) => Point;
type Look = { body: string; wall: string; ends?: string; leads?: 'rows' | 'ends'; print?: string };

const LOOKS: readonly (readonly [RegExp, Look])[] = [
  [/^chip-capacitor/, { body: '#b08d62', wall: '#7d6343', ends: '#c9c9c4' }],
  [/^chip-resistor/, { body: '#23211f', wall: '#111', ends: '#c9c9c4', print: '#d8d8d8' }],
  [/^chip-ferrite/, { body: '#4a4a4c', wall: '#2f2f31', ends: '#c9c9c4' }],
  [/^tantalum/, { body: '#c9973f', wall: '#93702f', leads: 'ends', print: '#5a3c10' }],
  [/^(lithium|coin)-cell/, { body: '#8fa7a0', wall: '#62766f', print: '#20302c' }],
  [/^crystal/, { body: '#b9b4a6', wall: '#86827a', print: '#444' }],
  [/^connector/, { body: '#ded9c6', wall: '#a8a494' }],
  [/^led/, { body: '#d9e8c8', wall: '#98a38a', ends: '#c9c9c4' }],
  [/^test-point/, { body: '#c8a24a', wall: '#c8a24a' }],
  [/switch$/, { body: '#5a5d60', wall: '#37393b', leads: 'ends' }],
  [/^(diode|sot)/, { body: '#2a2a2c', wall: '#161617', leads: 'ends', print: '#ccc' }],
  [/./, { body: '#2b2c2f', wall: '#171719', leads: 'rows', print: '#c2c2c2' }],
];
const lookOf = (part: Part): Look => (LOOKS.find(([named]) => named.test(part.class)) as (typeof LOOKS)[number])[1];

/** Everything that a camera sees of one side: substrate, holes, silk, lands, bodies with their walls, marks of pin 1. */
export function shapesOf(board: Board, side: Side, seen: Seen): PaintedShape[] {
  const flat = (points: readonly Point[], z = 0) => points.map((at) => seen({ ...at, z }));
  const parts = board.parts.filter((part) => part.side === side);
  return [
    { kind: 'fill', colour: '#26425c', corners: flat(flattenContour(board.outline, 0.02)) },
    ...board.cutouts.map(
      (cutout): PaintedShape => ({ kind: 'fill', colour: '#77736b', corners: flat(flattenContour(cutout, 0.02)) }),
    ),
    ...parts.flatMap((part) => [...landsOf(part, flat), silkOf(part, side, seen)]),
    ...parts.filter((part) => part.fitted).flatMap((part) => bodyShapes(part, side, seen)),
  ];
}

type Flat = (points: readonly Point[], z?: number) => Point[];

/** A rectangle of the part's own axes. */
const ownArea = (part: Part, x: number, y: number, length: number, width: number) => {
  const away = turnVector(x, y, part.turn);
  return rectangleCorners({
    x: part.x + away.x,
    y: part.y + away.y,
    lengthMm: length,
    widthMm: width,
    turnDeg: part.turn,
  });
};

function landsOf(part: Part, flat: Flat): PaintedShape[] {
  const { lengthMm, widthMm } = part.package;
  const look = lookOf(part);
  const land = (corners: Point[]): PaintedShape => ({ kind: 'fill', colour: '#c3b98f', corners: flat(corners) });
  if (part.package.shape === 'round') return [];
  const ends = (grown: number) =>
    [-1, 1].map((way) => land(ownArea(part, (way * lengthMm) / 2, 0, 0.35 * lengthMm, widthMm * grown)));
  if (look.ends || look.leads === 'ends') return ends(look.ends ? 1.1 : 0.6);
  if (look.leads !== 'rows' || part.class === 'bga') return [];
  const count = Math.max(1, Math.floor((part.pinCount ?? 8) / 2));
  const pitch = lengthMm / count;
  return [-1, 1].flatMap((way) =>
    Array.from({ length: count }, (_, index) =>
      land(ownArea(part, (index - (count - 1) / 2) * pitch, way * (widthMm / 2 + 0.5), 0.4 * pitch, 1.4)),
    ),
  );
}

/** The designator in silk, beside the body, upright for who looks at the board. */
function silkOf(part: Part, side: Side, seen: Seen): PaintedShape {
  const corners = rectangleCorners(bodyOf(part));
  const above = Math.max(...corners.map(({ y }) => y)) + 0.25;
  return lettering(
    part.refdes,
    '#e9e6da',
    { x: part.x, y: above, z: 0 },
    side,
    seen,
    part.package.lengthMm < 1.2 ? 0.8 : 1.1,
  );
}

function lettering(text: string, colour: string, at: Space, side: Side, seen: Seen, mm: number): PaintedShape {
  const here = seen(at);
  const toward = (dx: number, dy: number): Point => {
    const there = seen({ ...at, x: at.x + dx, y: at.y + dy });
    return { x: there.x - here.x, y: there.y - here.y };
  };
  return { kind: 'text', colour, text, at: here, along: toward(side === 'top' ? 1 : -1, 0), up: toward(0, 1), mm };
}

export const heightOf = (part: Part): number => part.package.heightMm ?? classById(part.class).defaultHeightMm;

function bodyShapes(part: Part, side: Side, seen: Seen): PaintedShape[] {
  const look = lookOf(part);
  const z = heightOf(part);
  const corners = outlineOf(part);
  const fill = (colour: string, points: Space[]): PaintedShape => ({ kind: 'fill', colour, corners: points.map(seen) });
  const walls = corners.map((from, index) => {
    const to = corners[(index + 1) % corners.length];
    return fill(look.wall, [
      { ...from, z: 0 },
      { ...to, z: 0 },
      { ...to, z },
      { ...from, z },
    ]);
  });
  const top = (points: Point[], colour: string) =>
    fill(
      colour,
      points.map((at) => ({ ...at, z })),
    );
  const { lengthMm } = part.package;
  const ends = look.ends
    ? [-1, 1].map((way) =>
        top(ownArea(part, way * 0.41 * lengthMm, 0, 0.18 * lengthMm, part.package.widthMm), look.ends ?? ''),
      )
    : [];
  const print =
    look.print && part.value && lengthMm > 1.5
      ? [
          lettering(
            part.value.slice(0, 14),
            look.print,
            { x: part.x, y: part.y - 0.4, z },
            side,
            seen,
            Math.min(1.2, lengthMm / 6),
          ),
        ]
      : [];
  return [...walls, top(corners, look.body), ...ends, ...markOf(part, z, top), ...print];
}

function markOf(part: Part, z: number, top: (points: Point[], colour: string) => PaintedShape): PaintedShape[] {
  if (!part.pin1) return [];
  const at = ownToBoard(part, part.pin1);
  const radius = Math.max(0.18, Math.min(0.5, part.package.widthMm / 12));
  return [top(ring(at, radius), z > 5 ? '#333' : '#f2f0e6')];
}

const ring = ({ x, y }: Point, radius: number): Point[] =>
  Array.from({ length: 20 }, (_, index) => {
    const angle = (index * Math.PI) / 10;
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  });

const outlineOf = (part: Part): Point[] =>
  part.package.shape === 'round' ? ring(part, part.package.lengthMm / 2) : rectangleCorners(bodyOf(part));
