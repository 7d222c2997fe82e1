import { TAG_GLYPHS } from '../../../shared-types/rules/tag-glyphs.ts';
import type { TagKind } from '../../../shared-types/tags.ts';
import type { SheetFigures } from '../../../shared-types/words/sheet-figures.ts';
import { SHEET } from '../../../shared-types/words/work-map.ts';
import { INK, type PageBox, POINTS_PER_MM } from '../paper.ts';
import { drawGlyph, drawWatchMark } from './glyph.ts';
import { cornersOfBox, type Ink } from './ink.ts';
import { outset, wave } from './part-outline.ts';

/** One key of a legend: how to draw its sample into a box, and its words. */
export type LegendEntry = { words: string; width: number; draw(ink: Ink, box: PageBox): void };

const ROW = 23;
const SAMPLE = 24;
const GAP = 14;
const TEXT = { face: 'sans', size: 10 } as const;

const sample = (box: PageBox): PageBox => {
  const middle = (box.y0 + box.y1) / 2;
  return { x0: box.x0 + 3, x1: box.x1 - 3, y0: middle - 5, y1: middle + 5 };
};

const outlineSample = (words: string, draw: (ink: Ink, box: PageBox) => void): LegendEntry => ({
  words,
  width: SAMPLE,
  draw: (ink, box) => draw(ink, sample(box)),
});

const middleOf = (box: PageBox) => ({ x: (box.x0 + box.x1) / 2, y: (box.y0 + box.y1) / 2 });

export const tagEntry = (kind: TagKind): LegendEntry => ({
  words: TAG_GLYPHS[kind].name,
  width: SAMPLE,
  draw: (ink, box) => (kind === 'watchPoint' ? drawWatchMark(ink, middleOf(box)) : drawGlyph(ink, kind, middleOf(box))),
});

/** Keys of the outlines, rings and lines. */
export const LEGEND = {
  area: outlineSample(SHEET.legend.area, (ink, box) => ink.box(box, { width: 1.5, dash: [8, 2.5, 1.5, 2.5] })),
  areaBehind: outlineSample(SHEET.legend.areaBehind, (ink, box) =>
    ink.box(box, { width: 0.7, colour: INK.soft, dash: [1.5, 2.5] }),
  ),
  over: outlineSample(SHEET.legend.over, (ink, box) => {
    ink.polygon(outset(cornersOfBox(box), 1), { width: 0.9 });
    ink.polygon(outset(cornersOfBox(box), -1), { width: 0.9 });
  }),
  unsure: outlineSample(SHEET.legend.unsure, (ink, box) => ink.box(box, { width: 1, dash: [2.6, 1.6] })),
  reflow: outlineSample(SHEET.legend.reflow, (ink, box) => ink.polygon(wave(cornersOfBox(box)), { width: 0.6 })),
  empty: outlineSample(SHEET.legend.empty, (ink, box) =>
    ink.box(box, { width: 0.6, colour: INK.faint, dash: [0.7, 1.4] }),
  ),
  cover: outlineSample(SHEET.legend.cover, (ink, box) =>
    ink.box(box, { width: 0.9, colour: INK.soft, dash: [7, 2.5] }),
  ),
  photo: outlineSample(SHEET.legend.photo, (ink, box) => ink.box(box, null, INK.hair)),
};

/** The plain lines' key. */
export const isothermEntry = (words: string): LegendEntry =>
  outlineSample(words, (ink, box) => {
    const { y } = middleOf(box);
    ink.segment({ x: box.x0, y }, { x: box.x1, y }, { width: 0.6 });
  });

/** The heavy lines' key: their figures differ from board to board. */
export const limitEntry = (words: string): LegendEntry =>
  outlineSample(words, (ink, box) => {
    const { y } = middleOf(box);
    ink.segment({ x: box.x0, y }, { x: box.x1, y }, { width: 2 });
  });

type PlacedEntry = { entry: LegendEntry; x: number; row: number };

function placeEntries(ink: Ink, entries: readonly LegendEntry[], firstIndent: number, width: number): PlacedEntry[] {
  let x = firstIndent;
  let row = 0;
  return entries.map((entry) => {
    const own = entry.width + 4 + ink.type.width(entry.words, TEXT.face, TEXT.size);
    if (x > 0 && x + own > width) {
      x = 0;
      row++;
    }
    const placed = { entry, x, row };
    x += own + GAP;
    return placed;
  });
}

/** Height of scale bar and legend under a picture. */
export function legendHeight(ink: Ink, entries: readonly LegendEntry[], bar: ScaleBar, width: number): number {
  const rows = placeEntries(ink, entries, scaleBarWidth(ink, bar) + GAP, width).map(({ row }) => row);
  return (Math.max(0, ...rows) + 1) * ROW;
}

/** A bar of a whole length in the user's unit. */
export type ScaleBar = { points: number; words: string };

export function scaleBar({ barsMm, length }: SheetFigures, scale: number): ScaleBar {
  const mm = barsMm.findLast((one) => one * scale * POINTS_PER_MM <= 90) ?? barsMm[0];
  return { points: mm * scale * POINTS_PER_MM, words: length(mm) };
}

const scaleBarWidth = (ink: Ink, { points, words }: ScaleBar): number => points + 6 + ink.type.width(words, 'mono', 10);

/** Draws the scale bar and, flowing after it, the keys. */
export function drawLegend(
  ink: Ink,
  entries: readonly LegendEntry[],
  { points: bar, words }: ScaleBar,
  at: { x: number; y: number; width: number },
): void {
  const middle = at.y + ROW / 2;
  ink.box({ x0: at.x, x1: at.x + bar / 2, y0: middle - 1.6, y1: middle + 1.6 }, { width: 0.6 }, INK.black);
  ink.box({ x0: at.x + bar / 2, x1: at.x + bar, y0: middle - 1.6, y1: middle + 1.6 }, { width: 0.6 }, INK.white);
  ink.text(at.x + bar + 6, middle + 3.5, words, { face: 'mono', size: 10 });
  for (const { entry, x, row } of placeEntries(
    ink,
    entries,
    scaleBarWidth(ink, { points: bar, words }) + GAP,
    at.width,
  )) {
    const top = at.y + row * ROW;
    entry.draw(ink, { x0: at.x + x, x1: at.x + x + entry.width, y0: top + 1, y1: top + ROW - 1 });
    ink.text(at.x + x + entry.width + 4, top + ROW / 2 + 3.5, entry.words, TEXT);
  }
}
