import type { Board } from '../../../shared-types/board.ts';
import type { Verdict } from './judge.ts';
import type { Truth } from './truth.ts';

interface Limits {
  readonly centreMm: number;
  readonly turnDegrees: number;
  readonly boxMm: number;
}

const SHOWN = 14;

function names(list: readonly string[]): string {
  const more = list.length - SHOWN;
  return more > 0 ? `${list.slice(0, SHOWN).join(' ')} and ${more} more` : list.join(' ');
}

/** Why a part has no pads of its own in the truth. */
function whyUnmatched(refdes: string, board: Board, truth: Truth): string {
  const part = board.parts.find((one) => one.refdes === refdes);
  if (truth.padsBy === null) return 'no two pads lie opposite of each other about it';
  if (truth.pads.has(refdes.replace(/\(\d+\)$/, ''))) return 'a further part of one reference';
  if (/^(G\*|LOGO|FID|MK|H|MH|REF\*)/i.test(refdes)) return 'a mark, hole or drawing without pads';
  if (part && /logo|fiducial|hole|mark/i.test(part.package.name)) return 'a mark, hole or drawing without pads';
  return `no pad carries its reference in the ${truth.padsBy} data`;
}

const NEAR_MM = 0.005;

/** Why a part lies off the middle of its pads: by the import's own report, or by the body that the file draws. */
function whyOff(refdes: string, board: Board, truth: Truth, lines: readonly string[]): string {
  const told = lines.find((line) => line.trim().startsWith(`${refdes} (`) && line.includes(' mm off: '));
  if (told) return told.slice(told.indexOf(' mm off: ') + 9);
  const part = board.parts.find((one) => one.refdes === refdes);
  const box = truth.chains[0]?.box;
  const drawn = (truth.bodies.get(refdes) ?? []).some(
    (at) => part && box && Math.hypot(part.x + box.minX - at.x, part.y + box.minY - at.y) < NEAR_MM,
  );
  if (drawn) return 'the file draws its body there, its pads lie unevenly about it';
  return lines.some((line) => line.includes('were not checked'))
    ? 'these files show no pads to find the middle by'
    : 'NOT EXPLAINED';
}

/** Everything of one import that lies beyond the limits, with the reason where it can be told. */
export function missesOf(
  verdict: Verdict,
  board: Board,
  truth: Truth,
  limits: Limits,
  lines: readonly string[],
): string[] {
  const misses: string[] = [];
  const byReason = new Map<string, string[]>();
  for (const refdes of verdict.unmatched) {
    const why = whyUnmatched(refdes, board, truth);
    byReason.set(why, [...(byReason.get(why) ?? []), refdes]);
  }
  for (const [why, list] of byReason) misses.push(`unmatched ${list.length}, ${why}: ${names(list)}`);
  if (verdict.sideRight < verdict.sideOf) misses.push(`SIDE ${verdict.sideOf - verdict.sideRight} wrong`);
  const off = verdict.centres.filter(({ mm }) => mm > limits.centreMm).sort((a, b) => b.mm - a.mm);
  for (const { refdes, mm } of off.slice(0, SHOWN)) {
    misses.push(`CENTRE ${refdes} ${mm.toFixed(3)} mm: ${whyOff(refdes, board, truth, lines)}`);
  }
  if (off.length > SHOWN) misses.push(`CENTRE ${off.length - SHOWN} more`);
  const turned = verdict.turns.filter(({ degrees }) => degrees > limits.turnDegrees);
  if (turned.length > 0) {
    misses.push(
      `TURN ${turned.length}: ${names(turned.map(({ refdes, degrees }) => `${refdes} ${degrees.toFixed(1)}`))}`,
    );
  }
  if (verdict.boxMm !== null && verdict.boxMm > limits.boxMm) misses.push(`BOX ${verdict.boxMm.toFixed(3)} mm`);
  return misses;
}
