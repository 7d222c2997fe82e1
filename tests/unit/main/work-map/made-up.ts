import { type Board, bodyOf, emptyBoard, type Part } from '../../../../shared-types/board.ts';
import { rectangleCorners, type Side } from '../../../../shared-types/geometry.ts';
import type { HeatRun, Plan } from '../../../../shared-types/plan.ts';
import { planForTargets, runsFor, siteOn } from '../../../../shared-types/rules/new-plan.ts';
import type { Tag } from '../../../../shared-types/tags.ts';
import { partNamed } from '../../../support/boards.ts';

/** Numbers that look random and are the same each time. */
export function sequence(seed: number): () => number {
  let state = seed >>> 0 || 1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

type Kind = {
  prefix: string;
  class: string;
  length: number;
  width: number;
  height: number;
  value: string;
  share: number;
};
const KINDS: Kind[] = [
  { prefix: 'C', class: 'chip-capacitor', length: 1, width: 0.5, height: 0.5, value: '100n', share: 0.45 },
  { prefix: 'R', class: 'chip-resistor', length: 1, width: 0.5, height: 0.35, value: '10k', share: 0.3 },
  { prefix: 'L', class: 'power-inductor', length: 4, width: 4, height: 3, value: '4u7', share: 0.05 },
  { prefix: 'U', class: 'so', length: 5, width: 4, height: 1.6, value: 'gate', share: 0.08 },
  { prefix: 'Y', class: 'crystal', length: 3.2, width: 2.5, height: 0.8, value: '25 MHz', share: 0.04 },
  { prefix: 'E', class: 'electrolytic-medium', length: 6.3, width: 6.3, height: 7.7, value: '100u', share: 0.04 },
  { prefix: 'J', class: 'connector-pbt', length: 12, width: 6, height: 8, value: 'field', share: 0.04 },
];

const LENGTH = 120;
const WIDTH = 90;

/** A two-sided board with a 17 mm array part (U1) in the middle and parts strewn round it, none overlapping. */
export function madeUpBoard(count: number, seed = 7): Board {
  const random = sequence(seed);
  const target = partNamed('U1', {
    x: 58,
    y: 46,
    turn: 0,
    package: { name: 'BGA 17 x 17', shape: 'rectangle', lengthMm: 17, widthMm: 17, heightMm: 1.4 },
    pin1: { x: -7.5, y: 7.5 },
    value: 'gateway processor',
  });
  const second = partNamed('U2', {
    x: 80,
    y: 46,
    package: { name: 'BGA 11 x 8', shape: 'rectangle', lengthMm: 8, widthMm: 11, heightMm: 1 },
    value: 'memory',
  });
  const parts: Part[] = [target, second];
  const boxes: Record<Side, { x0: number; y0: number; x1: number; y1: number }[]> = { top: [], bottom: [] };
  for (const part of parts) boxes.top.push(boxAround(part));
  const numbers = new Map<string, number>([['U', 2]]);
  for (let tries = 0; parts.length < count && tries < count * 200; tries++) {
    const kind = pick(random());
    const side: Side = random() < 0.6 ? 'top' : 'bottom';
    const part = partNamed('?', {
      side,
      x: Number((4 + random() * (LENGTH - 8)).toFixed(2)),
      y: Number((4 + random() * (WIDTH - 8)).toFixed(2)),
      turn: 90 * Math.floor(random() * 4),
      class: kind.class,
      value: kind.value,
      fitted: random() > 0.04,
      package: {
        name: `${kind.length} x ${kind.width}`,
        shape: kind.prefix === 'E' ? 'round' : 'rectangle',
        lengthMm: kind.length,
        widthMm: kind.width,
        heightMm: kind.height,
      },
    });
    const box = boxAround(part);
    const free = boxes[side].every((one) => box.x1 < one.x0 || box.x0 > one.x1 || box.y1 < one.y0 || box.y0 > one.y1);
    if (!free || box.x0 < 1 || box.y0 < 1 || box.x1 > LENGTH - 1 || box.y1 > WIDTH - 1) continue;
    const number = (numbers.get(kind.prefix) ?? 0) + 1;
    numbers.set(kind.prefix, number);
    boxes[side].push(box);
    parts.push({ ...part, refdes: `${kind.prefix}${number}` });
  }
  return {
    ...emptyBoard('Made-up gateway', LENGTH, WIDTH),
    revision: 'C2',
    outline: [
      { x: 3, y: 0 },
      { x: LENGTH - 3, y: 0, bulge: 0.4142 },
      { x: LENGTH, y: 3 },
      { x: LENGTH, y: WIDTH - 20 },
      { x: LENGTH - 14, y: WIDTH },
      { x: 3, y: WIDTH, bulge: 0.4142 },
      { x: 0, y: WIDTH - 3 },
      { x: 0, y: 3, bulge: 0.4142 },
    ],
    cutouts: [
      [
        { x: 6, y: 40 },
        { x: 9, y: 40, bulge: 1 },
        { x: 9, y: 50 },
        { x: 6, y: 50, bulge: 1 },
      ],
    ],
    fiducials: [
      { id: 'F1', side: 'top', x: 3, y: 6 },
      { id: 'F2', side: 'bottom', x: 3, y: 6 },
    ],
    covers: [
      {
        id: 'CAN1',
        kind: 'can',
        side: 'top',
        x: 96,
        y: 20,
        lengthMm: 22,
        widthMm: 16,
        turn: 0,
        heightMm: 3,
        sheetMm: 0.2,
        material: 'tinned-steel',
        fixing: 'soldered',
      },
    ],
    source: { drawnFrom: 'made up by a test', licence: '', invented: true },
    parts,
  };
}

function pick(random: number): Kind {
  let sum = 0;
  for (const kind of KINDS) {
    sum += kind.share;
    if (random < sum) return kind;
  }
  return KINDS[0];
}

function boxAround(part: Part) {
  const corners = rectangleCorners(bodyOf(part));
  const xs = corners.map((corner) => corner.x);
  const ys = corners.map((corner) => corner.y);
  return { x0: Math.min(...xs) - 0.4, x1: Math.max(...xs) + 0.4, y0: Math.min(...ys) - 0.4, y1: Math.max(...ys) + 0.4 };
}

/** A plan for U1 (and U2): heat runs, then `count` tags of every kind on the parts nearest to the site. */
export function madeUpPlan(board: Board, options: { tags: number; targets?: string[]; runs?: number }): Plan {
  const targets = options.targets ?? ['U1'];
  const base = planForTargets(board, 'HM-2107', targets);
  const sites = targets.flatMap((refdes, index) => {
    const part = board.parts.find((one) => one.refdes === refdes);
    return part ? [siteOn(part, `site-${index + 1}`)] : [];
  });
  const tags: Tag[] = [...base.tags, ...moreTags(board, options.tags - base.tags.length)];
  const runs: HeatRun[] = options.runs
    ? Array.from({ length: Math.ceil(options.runs / 3) }, (_, i) =>
        runsFor(
          sites.map((s) => s.id),
          'top',
          1 + 3 * i,
        ),
      )
        .flat()
        .slice(0, options.runs)
        .map((run, index) => ({ ...run, name: `${run.name} ${index + 1}` }))
    : base.heatRuns;
  return {
    ...base,
    sites,
    heatRuns: runs,
    tags: tags.slice(0, Math.max(0, options.tags)),
    ticket: {
      number: 'HM-2107',
      customer: 'Nordhang Glasshouses',
      unit: 'GG-00417',
      order: 'Exchange the gateway processor; the unit resets under load since the last storm.',
      technician: 'R. Okafor',
      date: '2026-11-20T23:59:00Z',
      notes: 'Comes back with its field-bus module; keep it with the board.',
    },
  };
}

function moreTags(board: Board, count: number): Tag[] {
  const [target] = board.parts;
  const near = board.parts
    .filter((part) => part.fitted && part.refdes !== 'U1' && part.refdes !== 'U2')
    .map((part) => ({ part, distance: Math.hypot(part.x - target.x, part.y - target.y) }))
    .sort((a, b) => a.distance - b.distance)
    .map(({ part }) => part);
  return near.slice(0, Math.max(0, count)).map((part, index): Tag => {
    const common = { id: `more-${index}`, order: index + 2, note: index % 3 === 0 ? 'Note the way round.' : '' };
    const on = { ...common, refdes: part.refdes };
    switch (index % 7) {
      case 0:
        return {
          ...common,
          order: null,
          kind: 'watchPoint',
          name: `W${1 + Math.floor(index / 7)}`,
          side: part.side,
          x: part.x,
          y: part.y,
          refdes: part.refdes,
        };
      case 1:
      case 4:
        return { ...on, kind: 'remove', goesBack: index % 2 === 0, traySlot: `A${index}` };
      case 2:
      case 5:
        return { ...on, kind: 'shield', shield: 'foil-tent' };
      case 3:
        return { ...on, kind: 'relocate', toRefdes: near[near.length - 1 - index]?.refdes ?? '' };
      default:
        return { ...on, kind: 'reprogram', way: 'in-circuit' };
    }
  });
}
