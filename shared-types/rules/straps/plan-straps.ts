import type { Board } from '../../board.ts';
import { insidePolygon, rectangleCorners } from '../../geometry.ts';
import type { Plan } from '../../plan.ts';
import type { StrapGroup, StrapSetting } from '../../straps.ts';
import { parseResistance } from '../resistance.ts';
import {
  type LeastWork,
  leastWork,
  type Need,
  type Resistor,
  type WorkPosition,
  type WorkStock,
} from './least-work.ts';
import { inWorkingOrder } from './move-order.ts';
import { needsOf, type SettingFault, type SettingNeed, unified } from './needs.ts';
import { type PositionNow, positionNow, sizeFromText } from './positions.ts';

/** One thing to do at the bench. `value` and `size` of the part that is moved, added or taken off. */
export type StrapMove = {
  kind: 'relocate' | 'add' | 'off';
  /** null: from stock. */
  from: string | null;
  /** null: it stays off. */
  to: string | null;
  value: string;
  size: string;
  /** A part that waits in the tray because its goal is still taken: moves go round in a ring. */
  waits: boolean;
};

/** Why something is not planned. `group`: name of the group. */
export type StrapRefusal =
  | ({ group: string } & SettingFault)
  | { group: string; code: 'setting-not-there' }
  | { group: string; code: 'position-on-no-part'; refdes: string }
  | { group: string; code: 'value-not-told'; refdes: string }
  | { group: string; code: 'no-part-at-hand'; refdes: string; value: string; size: string; near: string };

export type StrapPlan = {
  moves: StrapMove[];
  refused: StrapRefusal[];
  relocated: number;
  added: number;
  off: number;
  /** Groups with a wanted setting that the board says already. */
  settled: string[];
};

type Wanted = { group: StrapGroup; setting: StrapSetting };

/**
 * The least work that makes every wanted setting true, over all groups at once: a part that one group gives up may serve
 * another. A group whose setting cannot be reached is refused with the reason and left as it is.
 */
export function planStraps(board: Board, plan: Plan): StrapPlan {
  const refused: StrapRefusal[] = [];
  const wanted = plan.straps.wanted.flatMap(({ groupId, settingId }): Wanted[] => {
    const group = board.straps.find((one) => one.id === groupId);
    const setting = group?.settings.find((one) => one.id === settingId);
    if (group && setting) return [{ group, setting }];
    if (group) refused.push({ group: group.name, code: 'setting-not-there' });
    return [];
  });
  const accepted = wanted.flatMap((one) => acceptedNeeds(board, one, refused));
  const stock = plan.straps.stock.map(
    (entry): WorkStock => ({
      ohms: parseResistance(entry.value)?.ohms ?? null,
      size: sizeFromText(entry.size),
      tolerancePercent: entry.tolerancePercent,
      count: entry.count,
    }),
  );
  let reachable = withoutClashes(accepted, refused);
  for (;;) {
    const positions = jointNeeds(reachable).map(({ need, group }) => workPosition(board, plan, need, group));
    const work = leastWork(
      positions.map((one) => one.work),
      stock,
      plan.straps.stockFirst,
    );
    const lacking = unserved(positions, work, plan);
    if (lacking.length === 0) return strapPlan(inWorkingOrder(movesOf(positions, work, plan)), refused, reachable);
    refused.push(...lacking);
    // Half a setting would leave the board with a code of nobody's choice: the group stays as it is.
    const short = new Set(lacking.map(({ refdes }) => refdes));
    reachable = reachable.filter(({ needs }) => !needs.some((need) => need.is === 'fitted' && short.has(need.refdes)));
  }
}

function strapPlan(moves: StrapMove[], refused: StrapRefusal[], reachable: readonly Accepted[]): StrapPlan {
  const count = (kind: StrapMove['kind']) => moves.filter((move) => move.kind === kind).length;
  return {
    moves,
    refused,
    relocated: count('relocate'),
    added: count('add'),
    off: count('off'),
    settled: settledGroups(reachable, moves),
  };
}

type Accepted = { group: StrapGroup; needs: SettingNeed[] };

function acceptedNeeds(board: Board, { group, setting }: Wanted, refused: StrapRefusal[]): Accepted[] {
  const { needs, faults } = needsOf(group, setting);
  const lost = needs.filter(({ refdes }) => !board.parts.some((part) => part.refdes === refdes));
  refused.push(...faults.map((fault) => ({ group: group.name, ...fault })));
  refused.push(...lost.map(({ refdes }) => ({ group: group.name, code: 'position-on-no-part', refdes }) as const));
  return faults.length === 0 && lost.length === 0 ? [{ group, needs }] : [];
}

/** Groups that ask one position to be two things are refused, all of them. */
function withoutClashes(accepted: readonly Accepted[], refused: StrapRefusal[]): Accepted[] {
  const { faults } = unified(
    accepted.flatMap((one) => one.needs),
    [],
  );
  const clashing = new Set(faults.flatMap((fault) => (fault.code === 'positions-clash' ? [fault.refdes] : [])));
  const asks = ({ needs }: Accepted, refdes: string) =>
    needs.some((need) => need.refdes === refdes && (need.is === 'fitted' || need.is === 'empty'));
  for (const refdes of clashing) {
    const names = accepted.filter((one) => asks(one, refdes)).map(({ group }) => group.name);
    refused.push({ group: names.join(' / '), code: 'positions-clash', refdes });
  }
  return accepted.filter((one) => ![...clashing].some((refdes) => asks(one, refdes)));
}

/** Needs of all groups on one board, each with the first group that has it. */
function jointNeeds(groups: readonly Accepted[]): { need: SettingNeed; group: string }[] {
  const { needs } = unified(
    groups.flatMap((one) => one.needs),
    [],
  );
  return needs.map((need) => ({
    need,
    group: groups.find((one) => one.needs.some(({ refdes }) => refdes === need.refdes))?.group.name ?? '',
  }));
}

type Placed = { work: WorkPosition; now: PositionNow; need: SettingNeed; group: string };

function workPosition(board: Board, plan: Plan, need: SettingNeed, group: string): Placed {
  const belongs = board.straps.flatMap((one) => one.positions).find((one) => one.refdes === need.refdes);
  const now = positionNow(board, plan.straps.ticked, need.refdes, belongs?.value ?? '');
  const standing: Resistor | null = now.fitted
    ? { ohms: now.ohms, size: now.size, tolerancePercent: belongs?.tolerancePercent ?? null }
    : null;
  const { x = 0, y = 0, side = 'top' as const } = now.part ?? {};
  const work: WorkPosition = {
    refdes: need.refdes,
    x,
    y,
    side,
    now: standing,
    need: needWork(need, now),
    fromHeatMm: distanceToSites(plan, { x, y }),
  };
  return { work, now, need, group };
}

/** A need without a value is met by whatever stands there. */
function needWork(need: SettingNeed, now: PositionNow): Need {
  if (need.is !== 'fitted') return { is: need.is };
  const part = {
    ohms: parseResistance(need.value)?.ohms ?? null,
    size: now.size,
    tolerancePercent: need.tolerancePercent,
  };
  return part.ohms === null && now.fitted ? { is: 'leave' } : { is: 'fitted', part };
}

/** Gap to the nearest rework area, mm, 0 inside; Infinity without a site. */
function distanceToSites(plan: Plan, at: { x: number; y: number }): number {
  const gaps = plan.sites.map(({ area }) => {
    const corners = rectangleCorners(area);
    if (insidePolygon(at, corners)) return 0;
    return Math.min(...corners.map((corner, index) => toSegment(at, corner, corners[(index + 1) % corners.length])));
  });
  return Math.min(Infinity, ...gaps);
}

type Spot = { x: number; y: number };
function toSegment(at: Spot, a: Spot, b: Spot): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const along = ((at.x - a.x) * dx + (at.y - a.y) * dy) / (dx * dx + dy * dy || 1);
  const share = Math.max(0, Math.min(1, along));
  return Math.hypot(at.x - a.x - share * dx, at.y - a.y - share * dy);
}

type Lacking = Extract<StrapRefusal, { code: 'value-not-told' | 'no-part-at-hand' }>;

function unserved(positions: readonly Placed[], work: LeastWork, plan: Plan): Lacking[] {
  return positions.flatMap(({ work: position, need, group, now }, index): Lacking[] => {
    if (work.fillOf[index]?.from !== 'nothing' || need.is !== 'fitted') return [];
    const { refdes } = position;
    if (!parseResistance(need.value)) return [{ group, code: 'value-not-told', refdes }];
    const near = nearMisses(positions, need, now.size, plan);
    return [{ group, code: 'no-part-at-hand', refdes, value: need.value, size: now.size, near }];
  });
}

/** Parts of the value that are at hand but do not fit: their size or tolerance is another. */
function nearMisses(
  positions: readonly Placed[],
  need: SettingNeed & { is: 'fitted' },
  size: string,
  plan: Plan,
): string {
  const ohms = parseResistance(need.value)?.ohms;
  const of = (value: string) => parseResistance(value)?.ohms === ohms;
  const words = (name: string, partSize: string, tolerance: number | null) =>
    `${name} ${partSize}${tolerance === null || partSize !== size ? '' : `, ${tolerance} %`}`;
  const stock = plan.straps.stock
    .filter((entry) => of(entry.value) && entry.count !== 0)
    .map((entry) => words(entry.value, sizeFromText(entry.size), entry.tolerancePercent));
  const fitted = positions.flatMap(({ now, work }) =>
    now.fitted && of(now.value) && work.need.is === 'empty'
      ? [words(now.refdes, now.size, work.now?.tolerancePercent ?? null)]
      : [],
  );
  return [...fitted, ...stock].join('; ');
}

function movesOf(positions: readonly Placed[], work: LeastWork, plan: Plan): StrapMove[] {
  const moves: StrapMove[] = [];
  for (const [index, fill] of work.fillOf.entries()) {
    if (!fill || fill.from === 'nothing' || (fill.from === 'position' && fill.index === index)) continue;
    const to = positions[index];
    const source = fill.from === 'position' ? positions[fill.index] : null;
    const value = source ? source.now.value : plan.straps.stock[fill.index].value;
    moves.push({
      kind: source ? 'relocate' : 'add',
      from: source?.work.refdes ?? null,
      to: to.work.refdes,
      value,
      size: to.now.size,
      waits: false,
    });
  }
  for (const index of work.off) {
    const { now } = positions[index];
    moves.push({ kind: 'off', from: now.refdes, to: null, value: now.value, size: now.size, waits: false });
  }
  return moves;
}

function settledGroups(groups: readonly Accepted[], moves: readonly StrapMove[]): string[] {
  const touched = new Set(moves.flatMap(({ from, to }) => [from ?? '', to ?? '']));
  return groups.filter(({ needs }) => !needs.some(({ refdes }) => touched.has(refdes))).map(({ group }) => group.name);
}
