import type { Point } from '../../../shared-types/geometry.ts';
import { photoPatch } from '../../../shared-types/rules/photo-patch.ts';
import { chainMaps, invertMap, mapPoint, type PlaneMap } from '../../../shared-types/rules/plane-maps.ts';
import { boxesOverlap, INK, type PageBox, type PagePoint } from '../paper.ts';
import type { Ink } from './ink.ts';
import { outset } from './part-outline.ts';
import type { SheetPhoto } from './photo-images.ts';
import type { Picture } from './picture.ts';

/** A place on the photo as shares of its width and height, and where it lies on the page. */
type Vertex = { photo: Point; page: PagePoint };
type Triangle = [Vertex, Vertex, Vertex];

/** Lines and letters over it must stay readable on a black-and-white printer: a photo is never printed stronger than this. */
const STRONGEST = 0.5;
/** The map may be off by this much within a triangle, 0.25 mm of paper: a viewer draws the whole picture anew for each triangle. */
const TOLERANCE_POINTS = 0.7;
const MOST_HALVINGS = 9;
/** Neighbours overlap by this, or their edges would show as hairs. */
const OVERLAP_POINTS = 0.35;

/**
 * The photo under the drawing, within the board only: triangles, each with the affine map of its corners, so that a projective map is
 * printed without touching a pixel. It is drawn full and then veiled in white, so that the overlaps of triangles do not show.
 */
export function drawPhoto(ink: Ink, { photo, fit, image }: SheetPhoto, picture: Picture): void {
  const { widthPx, heightPx, opacity } = photo;
  const patch = photoPatch(fit, widthPx, heightPx);
  const toPage = (point: Point): PagePoint =>
    picture.view.toPage(mapPoint(fit.toBoard, { x: point.x * widthPx, y: point.y * heightPx }));
  const corners = patch.photo.map(({ x, y }) => vertexAt({ x: x / widthPx, y: y / heightPx }, toPage));
  if (corners.length < 3) return;
  const seen = overlap(boxOfPage(picture.boardPath), picture.frame);
  const page = corners.map((corner) => corner.page);
  ink.clipped([picture.boardPath, ...picture.holes], () => {
    if (!warped(ink, { photo, fit, image }, picture, page, seen)) {
      const pieces = corners
        .slice(2)
        .flatMap((third, index) => piecesOf([corners[0], corners[index + 1], third], toPage, seen, MOST_HALVINGS));
      for (const triangle of pieces) drawTriangle(ink, image, triangle);
    }
    ink.veil(page, INK.white, 1 - Math.min(STRONGEST, opacity));
  });
}

/** Lays the whole photo dot by dot; false: this pen draws pieces. `page`: the corners of what is shown of the photo. */
function warped(
  ink: Ink,
  { photo, fit, image }: SheetPhoto,
  { view }: Picture,
  page: readonly PagePoint[],
  seen: PageBox,
): boolean {
  const toPhoto = invertMap(chainMaps(affineOf(view.toPage), fit.toBoard));
  if (!ink.warp || !toPhoto) return false;
  const reduced = image.widthPx / photo.widthPx;
  const toPixels = chainMaps([reduced, 0, 0, 0, reduced, 0, 0, 0, 1], toPhoto);
  const box = overlap(boxOfPage(page), seen);
  if (box.x1 > box.x0 && box.y1 > box.y0) ink.clipped([page], () => ink.warp?.(image, box, toPixels));
  return true;
}

/** A map without perspective, from where it puts three points. */
function affineOf(map: (point: Point) => PagePoint): PlaneMap {
  const [from, right, up] = [map({ x: 0, y: 0 }), map({ x: 1, y: 0 }), map({ x: 0, y: 1 })];
  return [right.x - from.x, up.x - from.x, from.x, right.y - from.y, up.y - from.y, from.y, 0, 0, 1];
}

const vertexAt = (photo: Point, toPage: (point: Point) => PagePoint): Vertex => ({ photo, page: toPage(photo) });
const between = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** Halves a triangle across its worst side until straight lines serve; what lies out of sight is left out. */
function piecesOf(triangle: Triangle, toPage: (point: Point) => PagePoint, seen: PageBox, left: number): Triangle[] {
  if (!boxesOverlap(boxOfPage(triangle.map(({ page }) => page)), seen)) return [];
  const sides = triangle.map((from, index) => {
    const to = triangle[(index + 1) % 3];
    const middle = vertexAt(between(from.photo, to.photo), toPage);
    const straight = between(from.page, to.page);
    return { index, middle, off: Math.hypot(middle.page.x - straight.x, middle.page.y - straight.y) };
  });
  const worst = sides.reduce((most, side) => (side.off > most.off ? side : most));
  if (worst.off <= TOLERANCE_POINTS || left === 0) return [triangle];
  const [a, b, c] = [0, 1, 2].map((step) => triangle[(worst.index + step) % 3]);
  return [
    ...piecesOf([a, worst.middle, c], toPage, seen, left - 1),
    ...piecesOf([worst.middle, b, c], toPage, seen, left - 1),
  ];
}

function drawTriangle(ink: Ink, image: SheetPhoto['image'], [a, b, c]: Triangle): void {
  // Shares of the photo to points on the page: solved from the three corners.
  const [u1, v1, u2, v2] = [b.photo.x - a.photo.x, b.photo.y - a.photo.y, c.photo.x - a.photo.x, c.photo.y - a.photo.y];
  const area = u1 * v2 - u2 * v1;
  if (Math.abs(area) < 1e-12) return;
  const column = (from: number, first: number, second: number): [number, number, number] => {
    const along = ((first - from) * v2 - (second - from) * v1) / area;
    const down = ((second - from) * u1 - (first - from) * u2) / area;
    return [along, down, from - along * a.photo.x - down * a.photo.y];
  };
  const [xx, xy, x0] = column(a.page.x, b.page.x, c.page.x);
  const [yx, yy, y0] = column(a.page.y, b.page.y, c.page.y);
  const clip = outset([a.page, b.page, c.page], OVERLAP_POINTS);
  ink.image(image, { xx, yx, xy, yy, x0, y0 }, clip);
}

function boxOfPage(points: readonly PagePoint[]): PageBox {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
}

const overlap = (a: PageBox, b: PageBox): PageBox => ({
  x0: Math.max(a.x0, b.x0),
  y0: Math.max(a.y0, b.y0),
  x1: Math.min(a.x1, b.x1),
  y1: Math.min(a.y1, b.y1),
});
