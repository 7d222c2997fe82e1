import { importBoard } from '../../../../main/document/imports/import-board.ts';
import { type Dialect, type Field, MM_OF } from './dialect.ts';
import type { DialectCase } from './write-case.ts';

/** What became of a case: right, said to be unclear, or silently wrong. */
export interface CaseVerdict {
  readonly outcome: 'right' | 'unclear' | 'wrong';
  /** What differs from the board, or the codes of what was said. */
  readonly why: readonly string[];
}

/** Notes that tell a user to look at what may be wrong, by what they cover. */
const COVERS: Record<string, readonly string[]> = {
  place: ['unit-guessed', 'columns-guessed', 'bottom-y-negated', 'bottom-sign-not-told'],
  side: ['side-assumed', 'side-not-read', 'columns-guessed'],
  turn: ['turn-not-read', 'turn-sense-open', 'columns-guessed', 'bottom-sign-not-told'],
  text: ['columns-guessed', 'encoding-guessed', 'side-not-read'],
  missing: ['rows-not-read'],
};

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;

export function judgeCase(given: DialectCase): CaseVerdict {
  const result = importBoard(given.files);
  if (!result.ok) return { outcome: 'unclear', why: [result.problem.code] };
  const { board, report } = result.value;
  const said = new Set<string>(report.notes.filter(({ weight }) => weight === 'warn').map(({ code }) => code));
  // A guessed encoding is a note: what it may spoil are letters of values.
  if (report.notes.some(({ code }) => code === 'encoding-guessed')) said.add('encoding-guessed');
  const differing = differences(given, board.parts);
  const silent = differing.filter(({ kind }) => !COVERS[kind].some((code) => said.has(code)));
  if (silent.length > 0) return { outcome: 'wrong', why: silent.map(({ what }) => what) };
  return differing.length > 0 ? { outcome: 'unclear', why: [...said] } : { outcome: 'right', why: [] };
}

interface Difference {
  readonly kind: 'place' | 'side' | 'turn' | 'text' | 'missing';
  readonly what: string;
}

type Built = {
  readonly refdes: string;
  readonly side: string;
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  readonly value: string;
  readonly package: { readonly name: string; readonly heightMm: number | null };
};

function differences({ parts, dialect }: DialectCase, built: readonly Built[]): Difference[] {
  const found = new Map(built.map((part) => [part.refdes, part]));
  const has = (field: Field): boolean => dialect.columns.some(([, one]) => one === field);
  const pairs = parts.flatMap((part) => {
    const other = found.get(part.refdes);
    return other ? [{ part, other }] : [];
  });
  const missing = parts.filter(({ refdes }) => !found.has(refdes)).map(({ refdes }) => refdes);
  const extra = built.length - pairs.length;
  const list: Difference[] = [];
  if (missing.length + extra > 0) list.push({ kind: 'missing', what: `missing ${missing.join(' ')}, ${extra} others` });
  // Layers show the board's corner at 0, 0; without them only the places relative to each other can be known.
  const shift = dialect.withLayers
    ? { x: 0, y: 0 }
    : {
        x: median(pairs.map(({ part, other }) => other.x - part.x)),
        y: median(pairs.map(({ part, other }) => other.y - part.y)),
      };
  const within = toleranceMm(dialect);
  for (const { part, other } of pairs) {
    const off = Math.hypot(other.x - part.x - shift.x, other.y - part.y - shift.y);
    const say = (kind: Difference['kind'], what: string): number => list.push({ kind, what: `${part.refdes} ${what}` });
    if (off > within) say('place', `${off.toFixed(3)} mm off`);
    if (other.side !== part.side) say('side', `on the ${other.side}`);
    const turned = (((other.turn - part.turn) % 360) + 360) % 360;
    if (Math.min(turned, 360 - turned) > 0.02) say('turn', `turned ${other.turn} for ${part.turn}`);
    if (has('value') && part.value !== '' && !likeText(other.value, part.value))
      say('text', `value '${other.value}' for '${part.value}'`);
    if (has('package') && other.package.name !== part.packageName) say('text', `package '${other.package.name}'`);
    if (has('height') && Math.abs((other.package.heightMm ?? 0) - part.heightMm) > within)
      say('text', `height ${other.package.heightMm}`);
  }
  return list;
}

/** Rounding of the written digits, and of the offset that pads tell. */
function toleranceMm({ unit, digits, withLayers }: Dialect): number {
  return 1.5 * 10 ** -digits * MM_OF[unit] + (withLayers ? 0.02 : 0.002);
}

/** Letters that a way of writing cannot hold are left out by the writer: the rest must be there. */
function likeText(read: string, written: string): boolean {
  const plain = (text: string): string =>
    text
      .replaceAll(/["\s,;|!]/g, '')
      .replaceAll('\u00B5', 'u')
      .replaceAll('\u03A9', 'R');
  return plain(read) === plain(written);
}
