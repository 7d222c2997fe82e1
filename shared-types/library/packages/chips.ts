import type { LibraryPackage } from '../library-types.ts';
import { found, memory } from '../sources.ts';
import { chipByInch } from './chip-sizes.ts';

const SIZES = found('Published chip size charts; height typical, from memory');

type Kind = { prefix: string; classId: (inch: string) => string; heights: Record<string, number> };

const KINDS: Kind[] = [
  {
    prefix: 'R',
    classId: () => 'chip-resistor',
    heights: {
      '01005': 0.13,
      '0201': 0.23,
      '0402': 0.35,
      '0603': 0.45,
      '0805': 0.5,
      '1206': 0.55,
      '1210': 0.55,
      '2010': 0.6,
      '2512': 0.6,
    },
  },
  {
    prefix: 'C',
    classId: (inch) => (['1210', '1812', '2220'].includes(inch) ? 'chip-capacitor-large' : 'chip-capacitor'),
    heights: {
      '01005': 0.2,
      '0201': 0.3,
      '0402': 0.5,
      '0603': 0.8,
      '0805': 1.25,
      '1206': 1.6,
      '1210': 2.5,
      '1812': 2.5,
      '2220': 2.5,
    },
  },
  {
    prefix: 'L',
    classId: () => 'chip-ferrite',
    heights: { '0201': 0.3, '0402': 0.5, '0603': 0.8, '0805': 0.9, '1206': 1.1, '1210': 2.2 },
  },
  { prefix: 'LED', classId: () => 'led', heights: { '0402': 0.4, '0603': 0.6, '0805': 0.8, '1206': 1.1 } },
  { prefix: 'F', classId: () => 'fuse', heights: { '0603': 0.6, '0805': 0.7, '1206': 0.8, '1812': 0.9, '2512': 1 } },
];

/** Chips by inch code: 'R 0402', 'C 0603', 'L 0805', 'LED 0603', 'F 1206'. */
export const CHIP_PACKAGES: readonly LibraryPackage[] = [
  ...KINDS.flatMap(({ prefix, classId, heights }) =>
    Object.keys(heights)
      .sort()
      .flatMap((inch): LibraryPackage[] => {
        const size = chipByInch(inch);
        return size
          ? [
              {
                name: `${prefix} ${inch}`,
                shape: 'rectangle',
                lengthMm: size.lengthMm,
                widthMm: size.widthMm,
                heightMm: heights[inch],
                classId: classId(inch),
                pinCount: 2,
                source: SIZES,
              },
            ]
          : [];
      }),
  ),
  ...(
    [
      ['RN 4x0402', 2, 1, 0.35],
      ['RN 4x0603', 3.2, 1.6, 0.5],
    ] as const
  ).map(
    ([name, lengthMm, widthMm, heightMm]): LibraryPackage => ({
      name,
      shape: 'rectangle',
      lengthMm,
      widthMm,
      heightMm,
      classId: 'chip-array',
      pinCount: 8,
      source: memory('Usual resistor array sizes'),
    }),
  ),
];

/** Usual height of a chip of this kind and inch code, mm; null where the table has none. */
export function chipHeight(prefix: string, inch: string): number | null {
  return KINDS.find((kind) => kind.prefix === prefix)?.heights[inch] ?? null;
}
