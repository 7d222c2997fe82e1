/** What the import says about DXF and SVG drawings of an outline. */

/** As the drawing or the user calls it: mm, mil, inch, px... */
export type DrawingUnit = string;

type Detail = Record<string, string | number>;
type Words = (refs: string, count: number, detail: Detail) => string;

const CHANGE = 'Check one length you know; the unit can be chosen.';

export const DRAWING_NOTES = {
  'outline-alone': () =>
    'No parts were given: the board has its outline alone. Add the placements with it, or draw the parts that matter.',
  'drawing-no-loop': () =>
    'No closed line was found in this drawing. Close the outline, lines that meet must end within 0.2 mm of each other.',
  'drawing-cut-short': () => 'The drawing has no end mark: it may be cut short.',
  'drawing-unit-said': (_r, _n, d) => `Lengths in ${d.unit}, as the drawing says.`,
  'drawing-unit-refused': (_r, _n, d) =>
    `The drawing says ${d.said}, which would make no board of a likely size; ${d.unit} was taken. ${CHANGE}`,
  'drawing-unit-by-parts': (_r, _n, d) =>
    `The drawing does not say its unit; in ${d.unit} a closed line goes most closely round the parts.`,
  'drawing-unit-by-size': (_r, _n, d) =>
    `The drawing does not say its unit; ${d.unit} was taken for its likely size. ${CHANGE}`,
  'drawing-unit-pixels': () =>
    `The drawing does not say its unit; its numbers were taken as pixels of 1/96 inch, as the standard has it, though many programs mean mm. ${CHANGE}`,
  'drawing-layer': (_r, _n, d) =>
    `Layer '${d.layer}' was taken for the outline by its name; lines of other layers are offered too.`,
  'outline-double': (_r, _n, d) =>
    `The outline is drawn as the two edges of a pen ${d.width} mm wide; the outer edge was taken, so the board may come out by half of that too large on each side. The inner one is among the other outlines.`,
  'drawing-passed-over': (_r, _n, d) => `Passed over, as no lines of an outline: ${d.kinds}.`,
} satisfies Record<string, Words>;

/** Kinds that were passed over. */
export const SHAPE_KIND_WORDS: Record<string, string> = {
  tilted: 'entities tilted out of the plane',
  use: 'copies (use)',
  text: 'texts',
  image: 'pictures',
  'path-mistake': 'rests of paths behind a mistake',
};

/** Why a drawing was refused. */
export const DRAWING_FAILURES = {
  notWellFormed: 'it is cut short or no valid XML, export it again',
  ownEntities: 'it defines entities of its own, which are not read',
  nestedTooDeep: 'its groups or blocks are nested too deep',
  tooMany: 'it draws more than any outline needs; export the outline layer alone',
  binary: 'it is a binary DXF; save it as a text (ASCII) DXF',
  holdsItself: 'one of its blocks holds itself; export it again',
  badGroupCode: 'a group code is no number there; export it again',
  noSections: 'it has no sections; export it again',
};

/** What a drawing was taken for. */
export const DRAWING_ROLES = { dxf: 'DXF drawing, outline', svg: 'SVG drawing, outline' };

/** How the unit of a drawing was told. */
export const DRAWING_UNIT_WORDS: Record<string, string> = {
  said: 'said in the file',
  parts: 'not said; in it a closed line goes round the parts',
  size: 'not said; taken for its likely size',
  usual: 'not said; pixels, as the standard has it',
  chosen: 'chosen',
};
