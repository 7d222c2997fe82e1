import type { TagKind } from '../tags.ts';

/** How a tag looks, on the canvas, in the window and on paper: a letter inside a shape with a hatch. */
export type TagGlyph = {
  letter: string;
  name: string;
  shape: 'square' | 'arrow-pentagon' | 'arch' | 'hexagon' | 'notched-rectangle' | 'ring-dot';
  hatch: 'diagonal' | 'horizontal' | 'cross' | 'dots' | 'vertical' | 'none';
  /** Colour of a published colour-blind-safe set (Okabe and Ito 2008), or null: the text colour. */
  colour: string | null;
};

export const TAG_GLYPHS: Record<TagKind, TagGlyph> = {
  remove: { letter: 'R', name: 'Remove', shape: 'square', hatch: 'diagonal', colour: '#D55E00' },
  relocate: { letter: 'L', name: 'Relocate', shape: 'arrow-pentagon', hatch: 'horizontal', colour: '#0072B2' },
  shield: { letter: 'S', name: 'Shield', shape: 'arch', hatch: 'cross', colour: '#009E73' },
  replace: { letter: 'X', name: 'Replace', shape: 'hexagon', hatch: 'dots', colour: '#CC79A7' },
  reprogram: { letter: 'P', name: 'Reprogram', shape: 'notched-rectangle', hatch: 'vertical', colour: null },
  watchPoint: { letter: 'W', name: 'Watch', shape: 'ring-dot', hatch: 'none', colour: null },
};

type Corner = readonly [number, number];

/** Outline of a glyph's shape in a box from -1 to 1, y up; the ring is drawn as a circle, the arch with a round head. */
export const GLYPH_SHAPES: Record<TagGlyph['shape'], readonly Corner[] | 'circle'> = {
  square: [
    [-0.9, -0.9],
    [0.9, -0.9],
    [0.9, 0.9],
    [-0.9, 0.9],
  ],
  'arrow-pentagon': [
    [-1, -0.75],
    [0.35, -0.75],
    [1, 0],
    [0.35, 0.75],
    [-1, 0.75],
  ],
  arch: archCorners(),
  hexagon: Array.from({ length: 6 }, (_, i): Corner => [Math.cos((i * Math.PI) / 3), Math.sin((i * Math.PI) / 3)]),
  'notched-rectangle': [
    [-0.9, -0.8],
    [0.9, -0.8],
    [0.9, 0.8],
    [0.3, 0.8],
    [0.3, 0.5],
    [-0.3, 0.5],
    [-0.3, 0.8],
    [-0.9, 0.8],
  ],
  'ring-dot': 'circle',
};

function archCorners(): Corner[] {
  const head = Array.from(
    { length: 9 },
    (_, i): Corner => [0.9 * Math.cos((i * Math.PI) / 8), 0.1 + 0.85 * Math.sin((i * Math.PI) / 8)],
  );
  return [[-0.9, -0.9], [0.9, -0.9], ...head];
}
