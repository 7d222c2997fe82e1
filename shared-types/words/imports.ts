import type { ImportedTable, ImportNote, ImportReport, OutlineCandidateWords, PadCheck } from '../import-report.ts';
import { DRAWING_NOTES, DRAWING_ROLES, DRAWING_UNIT_WORDS } from './drawings.ts';

/** One sentence for everything that an import tells. */

const SHOWN = 12;

/** The first names and how many more there are. */
export function nameList(names: readonly string[], shown = SHOWN): string {
  const more = names.length - shown;
  return more > 0 ? `${names.slice(0, shown).join(', ')} and ${more} more` : names.join(', ');
}

/** Numbered references by their letters: 'TP 86, R 34'. */
export function byLetters(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) {
    const letters = /^[A-Za-z]+/.exec(name)?.[0] ?? name;
    counts.set(letters, (counts.get(letters) ?? 0) + 1);
  }
  return [...counts]
    .sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
    .map(([letters, count]) => `${letters} ${count}`)
    .join(', ');
}

type Words = (refs: string, count: number, detail: Record<string, string | number>) => string;
const parts = (count: number): string => (count === 1 ? '1 part' : `${count} parts`);

const NOTES = {
  ...DRAWING_NOTES,
  'archive-opened': (_r, _n, d) => `Opened; of its ${d.count} files these were read: ${d.used}.`,
  'design-alone': (_r, _n, d) => `The board was made from this file alone; also given, not used: ${d.files}.`,
  'netlist-pads': (_r, _n, d) =>
    `The pads of ${d.parts} references come from this netlist; it knows six letters of a reference at most.`,
  'netlist-moved': (_r, _n, d) =>
    `The netlist has an origin of its own: it was moved by x ${d.x}, y ${d.y} mm onto the pads of the Gerber layers, where ${d.votes} of ${d.of} pads agree.`,
  'netlist-by-corner': () =>
    'No pads tell how the netlist lies to the outline: it was laid on it by the lower left corner. Check one part.',
  'netlist-unread': (_r, _n, d) => `${d.count} pins of the netlist could not be read.`,
  'netlist-no-end': () => 'The netlist has no end mark (999): it may be cut short.',
  'netlist-not-needed': () => 'Not used: the netlist; other files tell the pads already.',
  'bill-merged': (_r, _n, d) =>
    `Merged by reference: ${d.matched} of ${d.placed} parts are in it; it gave ${d.values} values and ${d.packages} package names that were missing, and says which positions stay empty.`,
  'bill-missing': (r, n) => `${parts(n)} in the bill of materials, to be fitted, but without a position: ${r}.`,
  'bill-differs': (r, n) =>
    `${parts(n)} with another value in the bill of materials; that of the placements was kept: ${r}.`,
  'bill-unlisted': (r, n) => `${parts(n)} not in the bill of materials, kept as fitted: ${r}.`,
  'parts-by-pads': (_r, _n, d) =>
    `No placements were given: ${d.count} parts were made out of the pads and their references. Their turns were told by the pins, with pin 1 on the left or upper left at 0 degrees; package names and values are known only from a bill of materials, and positions left empty may be among them. Add the placements, or set what matters.`,
  'side-not-told': (r, n) => `${parts(n)} with pins that go through, top taken: ${r}. Check the side.`,
  'file-not-used': (_r, _n, d) => `Not used: ${d.what}.`,
  'file-not-read': (_r, _n, d) => `Not read: it is ${d.what}.`,
  'layer-broken': (_r, _n, d) => `This Gerber layer cannot be read: ${d.reason}. Export it again.`,
  'gerber-remark': (_r, _n, d) => `${d.what}`,
  'columns-not-known': (_r, _n, d) => `Columns that were not recognised and not used: ${d.columns}.`,
  'columns-guessed': (_r, _n, d) =>
    `The table has no headings; its columns were told by their content: ${d.columns}. Check them.`,
  'encoding-guessed': (_r, _n, d) => `The text encoding is not marked; ${d.encoding} was taken.`,
  'heading-only': () => 'The table has headings and no rows.',
  'decimal-comma': () => 'Numbers are written with a decimal comma.',
  'rows-not-read': (_r, _n, d) =>
    `${d.count} rows could not be read and are not on the board; the first: '${d.text}'. Lines: ${d.lines}.`,
  'turn-not-read': (r, n) => `${parts(n)} without a readable rotation, 0 degrees taken: ${r}.`,
  'side-not-read': (r, n, d) => `${parts(n)} with an unknown side word ('${d.word}'), top taken: ${r}. Check them.`,
  'side-assumed': () => 'No side is given: all parts were put on the top. Check this.',
  'side-from-pads': () => 'No side is given; each part was put on the side of its pads.',
  'side-from-name': (_r, _n, d) => `No side column: ${d.side} was taken from the file's ${d.source}.`,
  'unit-not-told': (_r, _n, d) =>
    `Nothing tells the unit, and none gives a board of a likely size: ${d.unit} was taken. Choose the unit.`,
  'unit-guessed': (_r, _n, d) =>
    `The unit is not said; ${d.unit} was taken because ${d.why}. Check one distance you know.`,
  'bottom-y-negated': () =>
    'Bottom y is counted downwards in the file (all of it is negative and none of the top, or so chosen); it was turned back. Check one bottom part.',
  'bottom-sign-not-told': (_r, _n, d) =>
    `There are bottom parts alone and all of their ${d.axis} is negative: it may be mirrored. Compare with the board, and turn it back if so.`,
  'bottom-negated': (_r, _n, d) => `Bottom x is negated in the file (${d.why}); it was turned back.`,
  'turn-sense': (_r, _n, d) =>
    `Rotations do not follow the usual sense; by the pads, top: ${d.top}, bottom: ${d.bottom}.`,
  'offset-not-known': () =>
    'No pads tell how placements lie to the outline; they were taken as they stand. Check one part.',
  'offset-by-corner': (_r, _n, d) =>
    `Placements were laid on the outline by its lower left corner: ${d.share} % of them then lie inside. Check one part.`,
  'panel-all': (_r, _n, d) =>
    `References repeat ${d.images} times in one pattern: a panel of ${d.images} boards. All were kept so that nothing is lost, the further ones numbered (2) and so on; choose one image for a single board.`,
  'panel-one': (r, n, d) =>
    `One of the ${d.images} images of a panel was taken; ${d.leftOut} parts of the others were left out${n ? `, and those outside it that belong to none: ${r}` : ''}.`,
  'reference-twice': (r, n) =>
    `${n === 1 ? '1 reference stands' : `${n} references stand`} for several parts; the further ones got a number: ${r}.`,
  'same-in-two-files': (_r, _n, d) => `${d.count} rows repeat parts of another file at the same place and count once.`,
  'inner-layer': (r, n) => `${parts(n)} on inner layers, not on the board: ${r}.`,
  'off-board': (r, n) => `${parts(n)} outside the outline, kept where the file puts them: ${r}.`,
  'not-fitted': (r, n) => `${parts(n)} marked as not fitted: ${r}.`,
  'no-pads': (r, n) => `${parts(n)} without pads in the Gerber layers: ${r}.`,
  'pads-only': (_r, n, d) =>
    `${n} references have pads but no placement (test points, holes, marks, empty positions); they are no parts: ${d.kinds}.`,
  'size-assumed': (r, n) =>
    `${parts(n)} whose size neither name nor pads tell, a small square taken: ${r}. Set their package.`,
  'covers-found': (r, n) =>
    `${n === 1 ? '1 shield can or frame' : `${n} shield cans or frames`}, taken as ${n === 1 ? 'a cover' : 'covers'} over the parts: ${r}. Height where none is given, sheet, metal and fixing are usual values: correct them, or make ${n === 1 ? 'it a part' : 'them parts'} again.`,
  'cover-size-unknown': (r, n) =>
    `${parts(n)} likely a shield can or frame, but nothing tells the size, so ${n === 1 ? 'it stays a part' : 'they stay parts'}: ${r}. Draw ${n === 1 ? 'it as a cover' : 'them as covers'}.`,
  'lies-over-parts': (r, n) =>
    `${parts(n)} over several others, perhaps cans or frames, imported as parts like the rest: ${r}. Say so if ${n === 1 ? 'it is one' : 'they are'}.`,
  'size-by-unnamed-pads': (r, n) =>
    `${parts(n)} whose size was guessed from the pads that lie symmetrically about them: ${r}.`,
  'size-by-first-pad': (r, n) =>
    `${parts(n)} whose size was guessed from the distance of their first pad: ${r}. Check their package.`,
  'array-by-grid': (r, n) =>
    `${parts(n)} taken as arrays because their pads form a grid, the body size is a guess: ${r}.`,
  'class-not-known': (r, n) => `${parts(n)} of unknown class: ${r}.`,
  'middle-from-pads': (r, n) =>
    `${parts(n)} whose file position is no body middle (a pin, or far off the pads); the pads' middle was taken: ${r}.`,
  'turn-differs': (r, n) => `${parts(n)} turned otherwise than their pads say: ${r}. Check pin 1.`,
  'turn-sense-open': (r, n) =>
    `${parts(n)} that may stand the other way round: the sense in which rotations are written is open for them, and pin 1 is not at its usual place: ${r}. Check pin 1.`,
  'side-differs': (r, n) => `${parts(n)} with pads on the other side: ${r}. Check the side.`,
  legend: (r, n) =>
    `${n === 1 ? '1 placement is' : `${n} placements are`} legend (logos and drawings without pads), no parts, and left out: ${r}.`,
  'no-outline': (_r, _n, d) =>
    `No layer shows an outline: a rectangle ${d.margin} mm round the parts was taken. Draw the real one.`,
  'outline-broken': (_r, _n, d) =>
    `The outline that the files show ${d.reason} and was not taken; a new board gets a rectangle ${d.margin} mm round its parts. Export the outline again, choose another loop, or draw the real one.`,
  'cutouts-broken': (_r, _n, d) =>
    `${d.count} cutouts that cross themselves or enclose nothing were left out; an update leaves outline and cutouts as they are. Draw them again.`,
  'outline-unsure': (_r, _n, d) =>
    `No closed loop holds 90 % of the parts or pads; the best one holds ${d.share} %. Check the outline.`,
  'laminate-guessed': (_r, _n, d) =>
    `${d.layers} copper layers by the files; which are planes, copper weight and thickness are guesses. Set them.`,
  'laminate-not-known': () => 'Copper layers and thickness are not known: four layers and 1.6 mm were taken. Set them.',
  'outline-gap': (_r, _n, d) => `The outline is not quite closed: gaps up to ${d.gap} mm were joined.`,
  'loops-left': (_r, n, d) =>
    `${d.count} loops inside the outline were not taken as cutouts${n ? '' : ' (another pen, parts inside, or drawings)'}.`,
  'cutouts-unsure': (_r, _n, d) =>
    `${d.count} cutouts were taken from a layer that does not call itself the board's profile. Check them.`,
} satisfies Record<string, Words>;

export type ImportNoteCode = keyof typeof NOTES;

/** One note as a sentence, with the file and line it is about. */
export function importNoteSentence(note: ImportNote): string {
  const words: Words = NOTES[note.code];
  const refs = note.refdes ?? [];
  const where = [note.file, note.line ? `line ${note.line}` : ''].filter(Boolean).join(', ');
  const sentence = words(nameList(refs), refs.length, note.detail ?? {});
  return where ? `${where}: ${sentence}` : sentence;
}

export const importNoteLine = (note: ImportNote): string => `${note.weight.padEnd(10)} ${importNoteSentence(note)}`;

const mm = (value: number, digits = 2): string => String(Number(value.toFixed(digits)));

/** Words for how a unit, a flip or an offset was found. */
export const BY_WORDS: Record<string, string> = {
  value: 'written behind the values',
  heading: 'said in the headings',
  preamble: 'said in the file',
  pads: 'found by laying parts on pads',
  size: 'guessed by the size of the board',
  chosen: 'chosen',
  signs: 'by its signs',
  usual: 'as usual, not checked',
  references: 'by the references on the pads',
  pairs: 'by the middles of pad pairs',
  own: 'both come from one place',
  inside: 'the parts lie inside the outline as they stand',
  corner: "by the outline's lower left corner",
  none: 'not known',
};

const WHY_OUTLINE: Record<ImportReport['outline']['why'], string> = {
  smallest: 'the smallest closed loop that holds 90 % of the parts',
  largest: 'the largest closed loop',
  best: 'the closed loop that holds most parts',
  pads: 'the smallest closed loop that holds 90 % of the pads',
  chosen: 'chosen',
  parts: 'a rectangle round the parts',
};

/** What a file was taken for. */
export const ROLE_WORDS: Record<string, string> = {
  ...DRAWING_ROLES,
  placements: 'placements',
  profile: 'Gerber, profile',
  mechanical: 'Gerber, mechanical',
  'copper-top': 'Gerber, copper top',
  'copper-bottom': 'Gerber, copper bottom',
  'copper-inner': 'Gerber, inner copper',
  'paste-top': 'Gerber, paste top',
  'paste-bottom': 'Gerber, paste bottom',
  'mask-top': 'Gerber, mask top',
  'mask-bottom': 'Gerber, mask bottom',
  legend: 'Gerber, legend',
  'other-layer': 'Gerber, other',
  design: 'IPC-2581, parts and profile',
  bill: 'bill of materials',
  netlist: 'IPC-D-356 netlist, pads by reference',
  'not-used': 'not used',
};

/** What kinds of file the import names when it cannot use them. */
export const KIND_WORDS: Record<string, string> = {
  drill: 'a drill file',
  netlist: 'a netlist',
  xml: 'an XML file',
  json: 'a JSON file',
  bill: 'a bill of materials without positions',
  text: 'a text without a table of placements',
  brokenDesign: 'an IPC-2581 file that cannot be read',
  brokenDrawing: 'a drawing that cannot be read',
  archive: 'an archive: unpack it first',
  spreadsheet:
    'a spreadsheet that cannot be opened (damaged, too large, or of another kind than XLSX and ODS): save it as CSV',
  picture: 'a picture',
  document: 'a PDF document',
  binary: 'no text',
  tooLarge: 'too large',
  empty: 'empty',
  'inner-layer': 'a layer that the board does not need',
};

/** Why an IPC-2581 file was refused. */
export const DESIGN_FAILURES = {
  notWellFormed: 'it is cut short or no valid XML, export it again',
  ownEntities: 'it defines entities of its own, which are not read',
  nestedTooDeep: 'its elements are nested too deep',
  tooMany: 'it holds more items than any board has',
  noUnits: 'its units are not millimetres, microns or inches',
};

/** How written angles are read. */
export const TURN_WORDS: Record<string, string> = {
  same: 'counter-clockwise, as written',
  opposite: 'clockwise',
  fromHalfTurn: '180 degrees minus the written angle',
  plusHalfTurn: '180 degrees plus the written angle',
};

export const SEPARATOR_WORDS: Record<string, string> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
  '!': 'exclamation mark',
  blanks: 'blanks',
  columns: 'fixed columns',
};

/** Why a part's pads lie off its placement. */
export const OFF_WORDS: Record<string, string> = {
  pin: 'its origin is a pin',
  far: 'its origin is far off its pads',
  uneven: 'its pads lie unevenly about its middle, like those of all parts of this package',
  single: 'its pads lie unevenly about its middle',
};

/** The report in plain lines, as the command line prints them. */
export function importReportLines(report: ImportReport): string[] {
  const { counts, outline, offset, shift } = report;
  const inner = counts.inner ? `, ${counts.inner} on inner layers` : '';
  const unread = counts.unread ? `, ${counts.unread} rows not read` : '';
  const placed = counts.top + counts.bottom + counts.inner > 0;
  const legend = counts.legend ? `, ${counts.legend} of them legend` : '';
  const lines = [
    ...report.files.map(({ name, role }) => `file       ${name}: ${ROLE_WORDS[role] ?? role}`),
    ...report.tables.map(tableLine),
    ...report.drawings.map(
      ({ file, unit, unitBy }) => `drawing    ${file}: in ${unit} (${DRAWING_UNIT_WORDS[unitBy]})`,
    ),
    `placements ${counts.top} top, ${counts.bottom} bottom${inner}${legend}${unread}`,
    `outline    ${mm(outline.lengthMm)} x ${mm(outline.widthMm)} mm, ${outline.cutouts} cutouts, ${outline.arcs} arcs; ${WHY_OUTLINE[outline.why]}${outline.file ? ` of ${outline.file}` : ''}${placed ? `, holds ${mm(outline.sharePercent, 1)} % of the parts` : ''}`,
    ...outline.others.map(otherLine),
    ...(placed
      ? [
          `offset     placements to Gerber x ${mm(offset.xMm, 4)}, y ${mm(offset.yMm, 4)} mm, ${BY_WORDS[offset.by]}${offset.of ? `: ${offset.votes} of ${offset.of} agree` : ''}`,
        ]
      : []),
    `shift      x ${mm(shift.xMm, 4)}, y ${mm(shift.yMm, 4)} mm, so that the outline's lower left is at 0, 0`,
    ...(placed ? [senseLine(report.sense)] : []),
  ];
  const check = report.check
    ? checkLines(report.check)
    : [
        'check      side, middle and turn were not checked: no pads with references, or the parts were made out of them',
      ];
  const notes = report.notes.map(importNoteLine);
  return [...lines, ...(placed ? check : []), ...notes];
}

function senseLine({ top, bottom, xNegated, xBy, turnsBy, turnsChosen, agreeing, of }: ImportReport['sense']): string {
  const x = `bottom x ${xNegated ? 'negated' : 'as seen from the top'} (${BY_WORDS[xBy]})`;
  const source = turnsBy === 'pads' ? 'pin numbers' : "the table's first pads";
  const told = of > 0 ? `${agreeing} of ${of} parts turn like others of their package by ${source}` : 'not checked';
  const by = turnsChosen ? `chosen; ${told}` : told;
  return `sense      turns: top ${TURN_WORDS[top]}, bottom ${TURN_WORDS[bottom]} (${by}); ${x}`;
}

function tableLine(table: ImportedTable): string {
  const heading = table.headingLine === null ? 'no headings' : `headings in line ${table.headingLine}`;
  return `table      ${table.file}: ${table.rows} rows, ${SEPARATOR_WORDS[table.separator] ?? table.separator}, ${table.encoding}, ${heading}, ${table.unit} (${BY_WORDS[table.unitFrom]})`;
}

function otherLine({ rank, file, lengthMm, widthMm, sharePercent }: OutlineCandidateWords): string {
  return `           other outline ${rank}: ${mm(lengthMm)} x ${mm(widthMm)} mm of ${file}, holds ${mm(sharePercent, 1)} %`;
}

function checkLines({ layer, withPads, side, centre, turn, withoutPads, padsOnly }: PadCheck): string[] {
  const { manyPins, twoPads, alone } = turn;
  return [
    `check      ${withPads} parts have pads (${layer === 'netlist' ? 'netlist' : `${layer} layers`}), ${withoutPads.length} have none; ${padsOnly.length} references have pads only`,
    `side       ${side.right} of ${withPads - side.throughHole} right by surface pads${side.wrong.length ? `, wrong: ${nameList(side.wrong)}` : ''}; ${side.throughHole} have through pins only`,
    `middle     ${centre.within} of ${withPads} within ${centre.limitMm} mm of the pads' middle`,
    ...centre.off.map(
      ({ refdes, mm: off, packageName, why }) =>
        `           ${refdes} (${packageName}) ${mm(off, 3)} mm off: ${OFF_WORDS[why] ?? why}`,
    ),
    `turn       ${manyPins.right} of ${manyPins.of} within ${turn.limitDegrees} degree by pin numbers; two pads modulo 180: ${twoPads.right} of ${twoPads.of} (${twoPads.rightWithPinNumbers} by pin numbers too); alone of their package, along their axes: ${alone.alongAxes} of ${alone.of}${alone.others.length ? ` (not: ${nameList(alone.others)})` : ''}; ${turn.onePin} with one pin`,
    ...turn.wrong.map(({ refdes, degrees }) => `           ${refdes} off by ${mm(degrees, 1)} degrees`),
  ];
}

/** What the options of an import on the command line take. */
export const IMPORT_USE = {
  unit: '--unit takes mm, mil, inch, um or cm.',
  drawingUnit: '--drawing-unit takes mm, mil, inch, um or cm.',
  bottomX: '--bottom-x takes top (as seen from the top) or negated.',
  bottomY: '--bottom-y takes top (as seen from the top) or negated.',
  panel: '--panel takes all or one.',
  side: '--side takes a word of the side column and what it means: --side WORD=top, =bottom or =inner.',
  cover: '--cover takes a designator and what it is: --cover SH1=can, =frame or =part.',
  outline: '--outline takes the rank of an outline that the report lists.',
  offset: '--offset takes x,y in mm, such as --offset=-12.5,3.',
} as const;
