/** A chip size: its code in inches and in metric, and its body, mm. */
export type ChipSize = { inch: string; metric: string; lengthMm: number; widthMm: number };

/**
 * Chip sizes. Published charts (circflow.com, core-emt.com, knutsson.dk) up to 2512; 008004 and the reverse and odd
 * sizes below it from memory. 2512 is 6332 in some charts and 6432 in others.
 */
export const CHIP_SIZES: readonly ChipSize[] = [
  { inch: '008004', metric: '0201', lengthMm: 0.25, widthMm: 0.125 },
  { inch: '01005', metric: '0402', lengthMm: 0.4, widthMm: 0.2 },
  { inch: '0201', metric: '0603', lengthMm: 0.6, widthMm: 0.3 },
  { inch: '0402', metric: '1005', lengthMm: 1, widthMm: 0.5 },
  { inch: '0603', metric: '1608', lengthMm: 1.6, widthMm: 0.8 },
  { inch: '0805', metric: '2012', lengthMm: 2, widthMm: 1.25 },
  { inch: '1206', metric: '3216', lengthMm: 3.2, widthMm: 1.6 },
  { inch: '1210', metric: '3225', lengthMm: 3.2, widthMm: 2.5 },
  { inch: '1812', metric: '4532', lengthMm: 4.5, widthMm: 3.2 },
  { inch: '2010', metric: '5025', lengthMm: 5, widthMm: 2.5 },
  { inch: '2512', metric: '6332', lengthMm: 6.3, widthMm: 3.2 },
  { inch: '2512', metric: '6432', lengthMm: 6.4, widthMm: 3.2 },
  { inch: '0306', metric: '0816', lengthMm: 0.8, widthMm: 1.6 },
  { inch: '0508', metric: '1220', lengthMm: 1.25, widthMm: 2 },
  { inch: '0612', metric: '1632', lengthMm: 1.6, widthMm: 3.2 },
  { inch: '1008', metric: '2520', lengthMm: 2.5, widthMm: 2 },
  { inch: '1808', metric: '4520', lengthMm: 4.5, widthMm: 2 },
  { inch: '2220', metric: '5750', lengthMm: 5.7, widthMm: 5 },
  { inch: '0404', metric: '1010', lengthMm: 1, widthMm: 1 },
  { inch: '0606', metric: '1616', lengthMm: 1.6, widthMm: 1.6 },
];

export const chipByInch = (code: string): ChipSize | undefined => CHIP_SIZES.find((size) => size.inch === code);
export const chipByMetric = (code: string): ChipSize | undefined => CHIP_SIZES.find((size) => size.metric === code);

/**
 * The sizes a code can mean, the inch one first: '0603', '0402' and '0201' exist in both systems, so that they give two.
 */
export function chipsOfCode(code: string): ChipSize[] {
  return [chipByInch(code), chipByMetric(code)].filter((size): size is ChipSize => size !== undefined);
}
