/** A4 in points, and where things may stand on it. The left margin leaves room for a binder's holes. */
export const POINTS_PER_MM = 72 / 25.4;
export const PAGE = { width: 595.28, height: 841.89 };
export const CONTENT = { left: 42, right: PAGE.width - 32, top: 36, bottom: PAGE.height - 52 };
export const CONTENT_WIDTH = CONTENT.right - CONTENT.left;

/** A rectangle on the page, points, y down. */
export type PageBox = { x0: number; y0: number; x1: number; y1: number };
export type PagePoint = { x: number; y: number };

export const boxesOverlap = (a: PageBox, b: PageBox): boolean =>
  a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
export const boxInside = (inner: PageBox, outer: PageBox): boolean =>
  inner.x0 >= outer.x0 && inner.x1 <= outer.x1 && inner.y0 >= outer.y0 && inner.y1 <= outer.y1;
export const grownBox = (box: PageBox, by: number): PageBox => ({
  x0: box.x0 - by,
  y0: box.y0 - by,
  x1: box.x1 + by,
  y1: box.y1 + by,
});

/** Inks of the sheet. Everything but the tags is black or grey, so that a black-and-white printer loses nothing. */
export const INK = {
  black: '#1F2328',
  soft: '#5B5F66',
  part: '#6B6F75',
  faint: '#A9A599',
  hair: '#C9C4B8',
  graph: '#D9D5CB',
  head: '#F1EDE4',
  white: '#FFFFFF',
};
