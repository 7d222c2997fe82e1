import { findingWords } from '../../../shared-types/words/findings.ts';
import { SHEET } from '../../../shared-types/words/work-map.ts';
import { type Line, lineHeight, type TextStyle, wrap } from '../drawing/phrase.ts';
import { ASCENT } from '../drawing/typeface.ts';
import { BODY, SOFT, STRONG } from '../layout/flow.ts';
import type { Sheet } from '../layout/sheet.ts';
import { CONTENT, CONTENT_WIDTH } from '../paper.ts';

const LEFT_WIDTH = 270;
const LABEL_WIDTH = 66;
const ORDER_LINES = 4;

/** Whether the order was too long for the first page. */
export type HeaderReport = { orderCut: boolean };

/** Ticket number and board at the left, who and when at the right, the order below. */
export function drawHeader(sheet: Sheet): HeaderReport {
  const { flow, facts } = sheet;
  const top = flow.y;
  const left = drawName(sheet, top);
  const right = drawTicketData(sheet, top);
  flow.y = Math.max(left, right) + 3;
  sheet.ink.segment({ x: CONTENT.left, y: flow.y }, { x: CONTENT.right, y: flow.y }, { width: 1.2 });
  flow.y += 5;
  const orderCut = drawOrder(sheet);
  for (const verdict of facts.assessment.findings.filter(({ code }) => code === 'decline-or-quote'))
    flow.paragraph(SHEET.verdict(findingWords(verdict, facts.words.figures.measures)), STRONG);
  if (facts.board.source.invented) flow.paragraph(SHEET.invented, STRONG);
  flow.y += 4;
  return { orderCut };
}

function drawName(sheet: Sheet, top: number): number {
  const { ink, facts } = sheet;
  const { number } = facts.plan.ticket;
  const size = [22, 17, 13].find((one) => ink.type.width(number, 'monoStrong', one) <= LEFT_WIDTH) ?? 13;
  const style: TextStyle = { face: 'monoStrong', strong: 'monoStrong', size };
  const board: TextStyle = { face: 'sansStrong', strong: 'sansStrong', size: 12 };
  let y = drawLines(sheet, wrap(SHEET.workMap, LEFT_WIDTH, SOFT, ink.type), SOFT, CONTENT.left, top);
  y = drawLines(sheet, wrap(number, LEFT_WIDTH, style, ink.type), style, CONTENT.left, y);
  return drawLines(
    sheet,
    wrap(SHEET.board(facts.board.name, facts.board.revision), LEFT_WIDTH, board, ink.type),
    board,
    CONTENT.left,
    y,
  );
}

function drawTicketData(sheet: Sheet, top: number): number {
  const { ink, facts } = sheet;
  const { unit, customer, technician, date } = facts.plan.ticket;
  const x = CONTENT.left + LEFT_WIDTH + 14;
  const width = CONTENT.right - x - LABEL_WIDTH;
  let y = top;
  for (const [label, value] of [
    [SHEET.unit, unit],
    [SHEET.customer, customer],
    [SHEET.technician, technician],
    [SHEET.date, date],
  ]) {
    ink.text(x, y + ASCENT * 10, label, { face: 'sans', size: 10, colour: SOFT.colour });
    if (value) y = drawLines(sheet, wrap(value, width, BODY, ink.type), BODY, x + LABEL_WIDTH, y);
    else {
      const line = y + ASCENT * 10 + 3;
      ink.segment({ x: x + LABEL_WIDTH, y: line }, { x: CONTENT.right, y: line }, { width: 0.5, colour: SOFT.colour });
      y += lineHeight(BODY) + 3;
    }
  }
  return y;
}

function drawLines(sheet: Sheet, lines: readonly Line[], style: TextStyle, x: number, top: number): number {
  let y = top;
  for (const line of lines) {
    sheet.ink.line(line, x, y + ASCENT * style.size, style);
    y += lineHeight(style);
  }
  return y;
}

/** The first lines of the order; a longer one goes on under its own heading. */
function drawOrder(sheet: Sheet): boolean {
  const { ink, flow, facts } = sheet;
  const order = facts.plan.ticket.order.trim();
  if (!order) return false;
  const lines = wrap(order, CONTENT_WIDTH, BODY, ink.type);
  const cut = lines.length > ORDER_LINES;
  flow.y = drawLines(sheet, lines.slice(0, cut ? ORDER_LINES - 1 : ORDER_LINES), BODY, CONTENT.left, flow.y);
  if (cut) flow.paragraph(SHEET.orderGoesOn, SOFT);
  return cut;
}
