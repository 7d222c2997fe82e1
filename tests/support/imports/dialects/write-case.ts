import type { GivenFile } from '../../../../main/document/imports/import-board.ts';
import { inventedFiles } from '../../../unit/main/document/imports/invented-board.ts';
import { type Dialect, drawDialect, type Field, MM_OF } from './dialect.ts';
import { type Draws, drawsOf } from './random.ts';
import { type RandomPart, randomBoard } from './random-board.ts';

/** A random board, written in a random dialect. */
export interface DialectCase {
  readonly seed: number;
  readonly parts: readonly RandomPart[];
  readonly dialect: Dialect;
  /** The tables as text, before their encoding. */
  readonly texts: readonly { readonly name: string; readonly text: string }[];
  readonly files: readonly GivenFile[];
}

/** Characters that an encoding cannot hold are left out of the values, and what its way of parting cells cannot keep apart. */
function writable(value: string, { encoding, parting, quotes }: Dialect): string {
  let text = value;
  if (encoding === 'ascii') text = text.replaceAll('\u00B5', 'u').replaceAll('\u03A9', 'R');
  if (encoding === 'latin1') text = text.replaceAll('\u03A9', 'R');
  if (parting === 'blanks') return text.replaceAll(/[\s"]/g, '') || 'x';
  if (parting === 'columns') return text.replaceAll('"', '') || 'x';
  return quotes === 'none' ? text.replaceAll(/[",;|!]/g, '') : text;
}

/** Origin that x and y are counted from: a corner, or anywhere on a page where pads tell or nothing hangs on it. */
function drawOrigin(draws: Draws, dialect: Dialect): { x: number; y: number } {
  const signs = dialect.negatedY || (dialect.negatedX && !dialect.withLayers);
  if (signs)
    return draws.one([
      { x: 0, y: 0 },
      { x: 12.5, y: 40 },
    ]);
  return draws.one([
    { x: 0, y: 0 },
    { x: 12.5, y: 40 },
    { x: 107.5, y: -81.2 },
    { x: -30, y: 55 },
  ]);
}

/** What the board looks like to the table: the way back to it is what the import must find. */
function seen(part: RandomPart, origin: { x: number; y: number }, dialect: Dialect) {
  const bottom = part.side === 'bottom';
  const at = (x: number, y: number) => ({
    x: (bottom && dialect.negatedX ? -1 : 1) * (x + origin.x),
    y: (bottom && dialect.negatedY ? -1 : 1) * (y + origin.y),
  });
  const angle = (part.turn * Math.PI) / 180;
  const [, px, py] = part.pads[0];
  const own = { x: px, y: bottom ? -py : py };
  const pad = {
    x: own.x * Math.cos(angle) - own.y * Math.sin(angle),
    y: own.x * Math.sin(angle) + own.y * Math.cos(angle),
  };
  const sign = { same: part.turn, opposite: -part.turn, fromHalfTurn: 180 - part.turn, plusHalfTurn: 180 + part.turn };
  const turn = sign[bottom ? dialect.bottomTurns : dialect.turns];
  return {
    ...at(part.x, part.y),
    pad: at(part.x + pad.x, part.y + pad.y),
    turn: Math.abs(turn) > 360 ? turn % 360 : turn,
  };
}

function cellsOf(part: RandomPart, origin: { x: number; y: number }, dialect: Dialect): string[] {
  const { columns, unit, unitIn, digits, decimalComma, sides } = dialect;
  const { x, y, pad, turn } = seen(part, origin, dialect);
  const number = (value: number, places: number): string => {
    const text = value.toFixed(places).replace(/^-(0\.?0*)$/, '$1');
    return decimalComma ? text.replace('.', ',') : text;
  };
  const length = (mm: number): string => number(mm / MM_OF[unit], digits) + (unitIn === 'suffix' ? unit : '');
  const write: Record<Field, () => string> = {
    refdes: () => part.refdes,
    value: () => writable(part.value, dialect),
    package: () => part.packageName,
    x: () => length(x),
    y: () => length(y),
    referenceX: () => length(x),
    referenceY: () => length(y),
    padX: () => length(pad.x),
    padY: () => length(pad.y),
    rotation: () => number(turn, 2),
    side: () => sides[part.side === 'top' ? 0 : 1],
    mirror: () => sides[part.side === 'top' ? 0 : 1],
    embedded: () => '',
    height: () => length(part.heightMm),
    other: () => 'n/a',
  };
  return columns.map(([, field]) => write[field]());
}

function joined(rows: readonly (readonly string[])[], dialect: Dialect, draws: Draws): string[] {
  const { parting, quotes, columns } = dialect;
  if (parting === 'columns' || parting === 'blanks') {
    const gap = parting === 'columns' ? draws.whole(2, 3) : 1;
    const widths = columns.map((_, column) => Math.max(...rows.map((cells) => cells[column].length)));
    const right = columns.map(
      ([, field]) => field !== 'refdes' && /^(x|y|ref|pad|rot)/.test(field) && draws.chance(0.6),
    );
    return rows.map((cells) =>
      cells
        .map((cell, column) => (right[column] ? cell.padStart(widths[column]) : cell.padEnd(widths[column])))
        .join(' '.repeat(gap))
        .trimEnd(),
    );
  }
  const space = parting === '!' ? ' ' : '';
  const isText = /[a-zA-Z"]/;
  return rows.map((cells) =>
    cells
      .map((cell) => {
        const needed = cell.includes(parting) || (cell.includes('"') && quotes !== 'none');
        const quoted = quotes === 'all' || needed || (quotes === 'texts' && isText.test(cell));
        if (!quoted || quotes === 'none') return cell;
        // An inner quote is doubled, as the rule is; some programs leave it single.
        return `"${dialect.preamble.length % 2 === 0 ? cell.replaceAll('"', '""') : cell}"`;
      })
      .join(`${space}${parting}${space}`),
  );
}

function encode(text: string, encoding: Dialect['encoding']): Uint8Array {
  const utf16 = (little: boolean, mark: boolean): Uint8Array => {
    const whole = mark ? `\uFEFF${text}` : text;
    const bytes = new Uint8Array(whole.length * 2);
    const view = new DataView(bytes.buffer);
    for (let at = 0; at < whole.length; at++) view.setUint16(at * 2, whole.charCodeAt(at), little);
    return bytes;
  };
  switch (encoding) {
    case 'latin1':
      return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    case 'utf16le':
      return utf16(true, true);
    case 'utf16be':
      return utf16(false, true);
    case 'utf16le-bare':
      return utf16(true, false);
    case 'utf16be-bare':
      return utf16(false, false);
    default:
      return new TextEncoder().encode(encoding === 'utf8-bom' ? `\uFEFF${text}` : text);
  }
}

function tableText(
  parts: readonly RandomPart[],
  origin: { x: number; y: number },
  dialect: Dialect,
  draws: Draws,
  side: string,
): string {
  const { columns, headed, comment, preamble, afterHeading, lineEnd, sideIn } = dialect;
  const heading = columns.map(([word], index) => (index === 0 ? comment + word : word));
  const cells = [...(headed ? [heading] : []), ...parts.map((part) => cellsOf(part, origin, dialect))];
  const rows = joined(cells, dialect, draws);
  const head = sideIn === 'preamble' ? [...preamble, `## Side : ${side}`] : preamble;
  const lines = headed ? [...head, rows[0], ...afterHeading, ...rows.slice(1)] : rows;
  return lines.join(lineEnd) + lineEnd;
}

/** The case of one seed. */
export function dialectCase(seed: number): DialectCase {
  const draws = drawsOf(seed);
  const dialect = drawDialect(draws);
  const parts = randomBoard(draws);
  const origin = drawOrigin(draws, dialect);
  const groups = dialect.files === 'one' ? [''] : ['top', 'bottom'];
  const ending = draws.one(['csv', 'txt', 'pos', 'xy']);
  const texts = groups.map((side) => {
    const own = side ? parts.filter((part) => part.side === side) : parts;
    const name =
      side && dialect.sideIn === 'name'
        ? `invented-${side}.${ending}`
        : `invented${side ? `-${side === 'top' ? 1 : 2}` : ''}.${ending}`;
    return { name, text: tableText(own, origin, dialect, draws, side) };
  });
  const files = texts.map(({ name, text }) => ({ name, bytes: encode(text, dialect.encoding) }));
  const layers = dialect.withLayers ? inventedFiles({ parts, origin: { x: 33.02, y: -20.5 } }).slice(1) : [];
  return { seed, parts, dialect, texts, files: [...files, ...layers] };
}
