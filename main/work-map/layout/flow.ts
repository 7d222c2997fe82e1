import type { Phrase } from '../../../shared-types/words/work-map.ts';
import type { Ink } from '../drawing/ink.ts';
import { type Line, lineHeight, type TextStyle, wrap } from '../drawing/phrase.ts';
import { ASCENT } from '../drawing/typeface.ts';
import { CONTENT, CONTENT_WIDTH, INK } from '../paper.ts';

export const BODY: TextStyle = { face: 'sans', strong: 'monoStrong', size: 10 };
export const SOFT: TextStyle = { ...BODY, colour: INK.soft };
export const STRONG: TextStyle = { face: 'sansStrong', strong: 'monoStrong', size: 10 };
export const FIGURES: TextStyle = { face: 'mono', strong: 'monoStrong', size: 10 };
const HEADING: TextStyle = { face: 'sansStrong', strong: 'monoStrong', size: 13 };

const SECTION: TextStyle = { face: 'sansStrong', strong: 'monoStrong', size: 15 };

/** The running position on the sheet. `y` is where the next thing may start. */
export type Flow = {
  ink: Ink;
  y: number;
  /** Starts a page; its name stands at the upper right. */
  startPage(name: string): void;
  /** Starts a part of the sheet: on this page when `height` points are left, else on the next one. */
  section(name: string, height: number): void;
  /** Starts the next page of the same name when fewer than `height` points are left. Returns true when it did. */
  need(height: number): boolean;
  left(): number;
  space(points: number): void;
  heading(text: string, keepWith?: number): void;
  paragraph(phrase: Phrase | string, style?: TextStyle, indent?: number): void;
};

/** A flow over the pages of a document. `head` is repeated at the top of every page but the first. */
export function createFlow(ink: Ink, head: string): Flow {
  let name = '';
  let pages = 0;
  const open = () => {
    ink.newPage();
    pages++;
    flow.y = CONTENT.top;
    if (pages > 1) flow.y = runningHead(ink, head, name);
  };
  const flow: Flow = {
    ink,
    y: CONTENT.top,
    startPage(next) {
      name = next;
      open();
    },
    section(next, height) {
      name = next;
      if (flow.y + height + 30 > CONTENT.bottom) open();
      else flow.y = sectionHead(ink, flow.y + 10, name);
    },
    need(height) {
      if (flow.y + height <= CONTENT.bottom) return false;
      open();
      return true;
    },
    left: () => CONTENT.bottom - flow.y,
    space(points) {
      flow.y += points;
    },
    heading(text, keepWith = 40) {
      const lines = wrap(text, CONTENT_WIDTH, HEADING, ink.type);
      const height = lines.length * lineHeight(HEADING);
      if (!flow.need(height + keepWith) && flow.y > CONTENT.top + 30) flow.y += 8;
      for (const line of lines) {
        ink.line(line, CONTENT.left, flow.y + ASCENT * HEADING.size, HEADING);
        flow.y += lineHeight(HEADING);
      }
      flow.y += 3;
    },
    paragraph(phrase, style = BODY, indent = 0) {
      for (const line of wrap(phrase, CONTENT_WIDTH - indent, style, ink.type)) {
        flow.need(lineHeight(style));
        ink.line(line, CONTENT.left + indent, flow.y + ASCENT * style.size, style);
        flow.y += lineHeight(style);
      }
    },
  };
  return flow;
}

/** The name of a part that starts within a page, under a heavy rule. */
function sectionHead(ink: Ink, y: number, name: string): number {
  ink.segment({ x: CONTENT.left, y }, { x: CONTENT.right, y }, { width: 1.6 });
  const [line] = wrap(name, CONTENT_WIDTH, SECTION, ink.type);
  ink.line(line, CONTENT.left, y + 4 + ASCENT * SECTION.size, SECTION);
  return y + 4 + lineHeight(SECTION) + 2;
}

/** What fits of a text on one line, with a mark where more was cut off. */
function firstLine(ink: Ink, text: string, width: number): Line {
  const [line, more] = wrap(text, width, SOFT, ink.type);
  if (!more) return line;
  const [shorter] = wrap(text, width - 12, SOFT, ink.type);
  return { ...shorter, pieces: [...shorter.pieces, { text: '…', face: SOFT.face }] };
}

/** Ticket and board at the left, the page's name at the right, a hairline below. Returns where the page goes on. */
function runningHead(ink: Ink, head: string, name: string): number {
  const baseline = CONTENT.top + 8;
  const nameWidth = ink.type.width(name, 'sansStrong', 10);
  const room = CONTENT_WIDTH - Math.min(nameWidth, 260) - 16;
  ink.line(firstLine(ink, head, room), CONTENT.left, baseline, SOFT);
  const [right] = wrap(name, 260, STRONG, ink.type);
  ink.line(right, CONTENT.right - right.width, baseline, STRONG);
  ink.segment({ x: CONTENT.left, y: baseline + 6 }, { x: CONTENT.right, y: baseline + 6 }, { width: 0.8 });
  return baseline + 20;
}
