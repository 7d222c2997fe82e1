import type { StrapMove } from './plan-straps.ts';

/**
 * Moves in an order that works at the bench: first what comes off for good, then each part to a position that is free
 * by then. Where parts go round in a ring, one waits in the tray until its goal is free. Added parts come last.
 */
export function inWorkingOrder(moves: readonly StrapMove[]): StrapMove[] {
  const ordered = moves.filter((move) => move.kind === 'off');
  let open = moves.filter((move) => move.kind === 'relocate');
  while (open.length > 0) {
    const taken = new Set(open.map((move) => move.from));
    const free = open.filter((move) => !taken.has(move.to));
    if (free.length > 0) {
      ordered.push(...free);
      open = open.filter((move) => !free.includes(move));
      continue;
    }
    // A ring: the first one is taken off and waits; its goal is free once the ring has gone round.
    const [first, ...rest] = open;
    const ring = ringFrom(first, rest);
    ordered.push({ ...first, waits: true }, ...ring);
    open = rest.filter((move) => !ring.includes(move));
  }
  return [...ordered, ...moves.filter((move) => move.kind === 'add')];
}

/** The other moves of a ring, each into the position that the one before it left. */
function ringFrom(first: StrapMove, others: readonly StrapMove[]): StrapMove[] {
  const ring: StrapMove[] = [];
  for (let gap = first.from; ; ) {
    const next = others.find((move) => move.to === gap && !ring.includes(move));
    if (!next) return ring;
    ring.push(next);
    gap = next.from;
  }
}
