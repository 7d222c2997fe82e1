import type { TagKind } from '../../../shared-types/tags.ts';
import { type Phrase, SHEET } from '../../../shared-types/words/work-map.ts';
import { drawBadge, drawGlyph, GLYPH_RADIUS } from '../drawing/glyph.ts';
import { type Line, lineHeight, type TextStyle, wrap } from '../drawing/phrase.ts';
import { ASCENT } from '../drawing/typeface.ts';
import { CONTENT, CONTENT_WIDTH, INK } from '../paper.ts';
import { BODY, type Flow, STRONG } from './flow.ts';

/** A cell: words, an empty field to write in, a box to tick, or a tag. */
export type Cell = Phrase | string | { blank: true } | { tick: true } | { tag: TagKind; order: number | null };

export type Column = {
  title: string;
  /** Fixed width in points, or a share of what is left. */
  width?: number;
  share?: number;
  align?: 'left' | 'right';
  style?: TextStyle;
};

const PAD_X = 4;
const PAD_Y = 3;
const WRITE_IN_HEIGHT = 22;
const TAGGED_HEIGHT = 2 * GLYPH_RADIUS + 14;

type Laid = { lines: Line[]; style: TextStyle; align: 'left' | 'right' };

const isWords = (cell: Cell): cell is Phrase | string => typeof cell === 'string' || Array.isArray(cell);

/** Widths of the columns: fixed ones as they are, shares divide the rest. */
export function columnWidths(columns: readonly Column[], total = CONTENT_WIDTH): number[] {
  const fixed = columns.reduce((sum, column) => sum + (column.width ?? 0), 0);
  const shares = columns.reduce((sum, column) => sum + (column.width === undefined ? (column.share ?? 1) : 0), 0);
  return columns.map((column) => column.width ?? ((total - fixed) * (column.share ?? 1)) / shares);
}

/** What a heading puts above and below itself, points. */
const ROUND_HEADING = 12;

type LaidTable = {
  widths: number[];
  rows: readonly (readonly Cell[])[];
  cells: Laid[][];
  heights: number[];
  headHeight: number;
  drawHead(): void;
};

/** Tables up to this height are not broken over pages; longer ones begin where two of their rows have room. */
const KEPT_WHOLE = 90;

function layTable(flow: Flow, columns: readonly Column[], rows: readonly (readonly Cell[])[]): LaidTable {
  const widths = columnWidths(columns);
  const lay = (cell: Cell, index: number, style: TextStyle): Laid => ({
    lines: isWords(cell) ? wrap(cell, widths[index] - 2 * PAD_X, style, flow.ink.type) : [],
    style,
    align: columns[index].align ?? 'left',
  });
  const titled = columns.some((column) => column.title !== '');
  const head = columns.map((column, index) => lay(column.title, index, STRONG));
  const headHeight = titled ? heightOf(head) + 2 : 0;
  const cells = rows.map((row) => row.map((cell, index) => lay(cell, index, columns[index].style ?? BODY)));
  return {
    widths,
    rows,
    cells,
    heights: rows.map((row, index) => Math.max(heightOf(cells[index]), heightOfMarks(row))),
    headHeight,
    drawHead: () => (titled ? drawHeadRow(flow, head, widths, headHeight) : rule(flow, 0.8)),
  };
}

/** Height that has to stay on one page with what stands above the table. */
function kept(table: LaidTable, mostKept: number): number {
  const whole = table.headHeight + table.heights.reduce((sum, height) => sum + height, 0);
  const firstRows = (table.heights[0] ?? 0) + (table.heights[1] ?? 0);
  return whole <= mostKept ? whole : table.headHeight + Math.min(firstRows, KEPT_WHOLE);
}

/**
 * A table over as many pages as it takes; title and head are repeated on each. A row stays whole unless it is taller than a
 * page: then its words run on. `title`: a heading that stays with it; `mostKept`: a table up to this height is not broken. No rows, no table.
 */
export function drawTable(
  flow: Flow,
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  title?: string,
  mostKept = KEPT_WHOLE,
): void {
  if (rows.length === 0) return;
  const table = layTable(flow, columns, rows);
  if (title !== undefined) flow.heading(title, kept(table, mostKept) + ROUND_HEADING);
  else flow.need(kept(table, mostKept));
  table.drawHead();
  const drawAgain = () => {
    if (title !== undefined) flow.heading(SHEET.continued(title));
    table.drawHead();
  };
  const whole = CONTENT.bottom - CONTENT.top - 56 - table.headHeight;
  for (const [index, row] of rows.entries()) {
    const height = table.heights[index];
    if (height > whole) drawTallRow(flow, table.cells[index], table.widths, drawAgain);
    else {
      // The last row is not left alone on a page of its own.
      const next = index === rows.length - 2 ? (table.heights[index + 1] ?? 0) : 0;
      if (flow.need(height + (height + next <= KEPT_WHOLE ? next : 0))) drawAgain();
      drawRow(flow, row, table.cells[index], table.widths, height);
    }
  }
  rule(flow, 0.8);
  flow.y += 4;
}

const heightOf = (cells: readonly Laid[]): number =>
  2 * PAD_Y + Math.max(...cells.map((cell) => Math.max(1, cell.lines.length) * lineHeight(cell.style)));

const heightOfMarks = (row: readonly Cell[]): number =>
  row.some((cell) => !isWords(cell) && 'tag' in cell)
    ? TAGGED_HEIGHT
    : row.some((cell) => !isWords(cell))
      ? WRITE_IN_HEIGHT
      : 0;

function rule(flow: Flow, width: number, colour: string = INK.black): void {
  flow.ink.segment({ x: CONTENT.left, y: flow.y }, { x: CONTENT.right, y: flow.y }, { width, colour });
}

function drawHeadRow(flow: Flow, head: readonly Laid[], widths: readonly number[], height: number): void {
  rule(flow, 1.2);
  drawCells(flow, head, widths, flow.y + 1);
  flow.y += height;
  rule(flow, 0.6);
}

function drawCells(flow: Flow, cells: readonly Laid[], widths: readonly number[], top: number): void {
  let x = CONTENT.left;
  cells.forEach((cell, index) => {
    cell.lines.forEach((line, row) => {
      const left = cell.align === 'right' ? x + widths[index] - PAD_X - line.width : x + PAD_X;
      const baseline = top + PAD_Y + ASCENT * cell.style.size + row * lineHeight(cell.style);
      flow.ink.line(line, left, baseline, cell.style);
    });
    x += widths[index];
  });
}

function drawRow(
  flow: Flow,
  row: readonly Cell[],
  cells: readonly Laid[],
  widths: readonly number[],
  height: number,
): void {
  const top = flow.y;
  const slack = Math.max(0, height - heightOf(cells));
  drawCells(flow, cells, widths, top + slack / 2);
  let x = CONTENT.left;
  row.forEach((cell, index) => {
    if (!isWords(cell)) drawMark(flow, cell, x, widths[index], top, height);
    x += widths[index];
  });
  flow.y += height;
  rule(flow, 0.35, INK.faint);
}

function drawMark(
  flow: Flow,
  cell: Exclude<Cell, Phrase | string>,
  x: number,
  width: number,
  top: number,
  height: number,
): void {
  // Beside many lines of words a mark stands at their beginning.
  const middle = top + Math.min(height, 'tag' in cell ? TAGGED_HEIGHT : 2 * WRITE_IN_HEIGHT) / 2;
  if ('blank' in cell)
    flow.ink.box({ x0: x + 2, x1: x + width - 2, y0: top + 2, y1: top + height - 2 }, { width: 0.6, colour: INK.soft });
  else if ('tick' in cell)
    flow.ink.box({ x0: x + PAD_X, x1: x + PAD_X + 12, y0: middle - 6, y1: middle + 6 }, { width: 0.9 });
  else {
    const centre = { x: x + PAD_X + GLYPH_RADIUS, y: middle + 3 };
    drawGlyph(flow.ink, cell.tag, centre);
    if (cell.order !== null) drawBadge(flow.ink, cell.order, centre.x + GLYPH_RADIUS - 4.5, centre.y - 11);
  }
}

/** A row taller than a page: its words run on, line by line, with the head repeated. */
function drawTallRow(flow: Flow, cells: readonly Laid[], widths: readonly number[], drawHead: () => void): void {
  let from = 0;
  const most = Math.max(...cells.map((cell) => cell.lines.length));
  while (from < most) {
    const step = lineHeight(BODY);
    const fit = Math.floor((CONTENT.bottom - flow.y - 2 * PAD_Y) / step);
    if (fit < 2) {
      flow.need(CONTENT.bottom);
      drawHead();
      continue;
    }
    const part = cells.map((cell) => ({ ...cell, lines: cell.lines.slice(from, from + fit) }));
    drawCells(flow, part, widths, flow.y);
    flow.y += heightOf(part);
    rule(flow, 0.35, INK.faint);
    from += fit;
  }
}
