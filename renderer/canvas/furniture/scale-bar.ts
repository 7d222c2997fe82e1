/** Length of the scale bar: the largest of 1, 2, 5 times a power of ten, mm, that fits into the given pixels. */
export function scaleBarMm(zoom: number, mostPx = 130): number {
  const most = mostPx / zoom;
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [5, 2, 1].find((factor) => factor * power <= most + 1e-9) ?? 1;
  return Number((step * power).toPrecision(1));
}
