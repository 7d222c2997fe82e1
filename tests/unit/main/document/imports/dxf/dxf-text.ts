/** DXF texts of our own invention. */

export type Pair = readonly [code: number, value: string | number];

export const pairsText = (pairs: readonly Pair[]): string =>
  pairs.map(([code, value]) => `${code}\n${value}\n`).join('');

export const section = (name: string, ...pairs: readonly Pair[]): Pair[] => [
  [0, 'SECTION'],
  [2, name],
  ...pairs,
  [0, 'ENDSEC'],
];

export const header = (insunits: number): Pair[] => section('HEADER', [9, '$INSUNITS'], [70, insunits]);

/** A whole file out of sections. */
export const dxfText = (...sections: readonly (readonly Pair[])[]): string =>
  pairsText([...sections.flat(), [0, 'EOF']]);

export const line = (x1: number, y1: number, x2: number, y2: number, layer = '0'): Pair[] => [
  [0, 'LINE'],
  [8, layer],
  [10, x1],
  [20, y1],
  [11, x2],
  [21, y2],
];

export const box = (x: number, y: number, width: number, height: number, layer = '0'): Pair[] => [
  ...line(x, y, x + width, y, layer),
  ...line(x + width, y, x + width, y + height, layer),
  ...line(x + width, y + height, x, y + height, layer),
  ...line(x, y + height, x, y, layer),
];

export const block = (name: string, ...pairs: readonly Pair[]): Pair[] => [
  [0, 'BLOCK'],
  [2, name],
  [10, 0],
  [20, 0],
  ...pairs,
  [0, 'ENDBLK'],
];

export const insert = (name: string, ...pairs: readonly Pair[]): Pair[] => [[0, 'INSERT'], [2, name], ...pairs];
