import type { LengthWord, Meaning, TurnRule } from '../../import-choices.ts';
import type { ImportFacts } from '../../import-report.ts';
import { DRAWING_UNIT_WORDS } from '../drawings.ts';

/** What a column means, as the heading of a preview. */
export const meaningWords: Record<Meaning, string> = {
  refdes: 'Designator',
  x: 'X',
  y: 'Y',
  rotation: 'Rotation',
  side: 'Side',
  mirror: 'Mirrored',
  package: 'Package',
  value: 'Value',
  description: 'Description',
  height: 'Height',
  fitted: 'Fitted',
  unit: 'Unit',
  referenceX: 'Origin X',
  referenceY: 'Origin Y',
  padX: 'First pad X',
  padY: 'First pad Y',
  embedded: 'Inner layer',
  plain: 'Not used',
};

export const unitWords: Record<LengthWord, string> = { mm: 'mm', mil: 'mil', inch: 'inch', um: 'µm', cm: 'cm' };

export const topTurnWords: Record<TurnRule['top'], string> = {
  same: 'Counter-clockwise',
  opposite: 'Clockwise',
};

export const bottomTurnWords: Record<TurnRule['bottom'], string> = {
  same: 'Counter-clockwise, seen from the top',
  opposite: 'Clockwise, seen from the top',
  fromHalfTurn: '180° minus the figure',
  plusHalfTurn: '180° plus the figure',
};

const columnReasons = { heading: 'by the heading', content: 'by its content', chosen: 'chosen' } as const;
const sideReasons = {
  column: 'from its column',
  preamble: 'said above the table',
  name: "from the file's name",
  pads: 'by the pads of each part',
  assumed: 'not said: top taken',
  chosen: 'chosen',
} as const;

/** Words of the import dialogue, beside those of its notes. */
export const importDialogWords = {
  files: (count: number) => (count === 1 ? '1 file' : `${count} files`),
  addFiles: 'Add files',
  remembered: 'Read as chosen last time for files with these headings.',
  chosen: 'Read with your choices; they are kept for files with these headings.',
  forget: 'Forget',
  reset: 'Back to the guesses',
  reading: 'Reading',
  updateTitle: 'Update the board from files',
  compare: 'Show what changes',
  noBoard: 'These files give no board yet.',
  sayOrAdd: 'Say what the columns mean where a table is shown, or add the files that are missing.',
  purpose: 'For',
  purposes: { new: 'a new ticket', update: (board: string) => `the open board, ${board}` },
  stays: 'The drawing shows the last choice that gave a board.',
  table: (file: string, rows: number) => `${file}: ${rows} ${rows === 1 ? 'row' : 'rows'}`,
  more: (count: number) =>
    count === 1 ? 'and 1 file with the same headings' : `and ${count} files with the same headings`,
  columnOf: (heading: string) => `Meaning of the column ${heading}`,
  columnsBy: (by: keyof typeof columnReasons) => `Columns told ${columnReasons[by]}`,
  unit: 'Unit',
  drawings: 'Drawing',
  drawingUnit: (file: string, by: ImportFacts['drawings'][number]['unitBy']) =>
    `Unit of ${file} (${DRAWING_UNIT_WORDS[by]})`,
  side: 'Side of the parts',
  sideOf: (file: string) => `Side of ${file}`,
  sides: { top: 'Top', bottom: 'Bottom' },
  sideBy: (by: keyof typeof sideReasons) => sideReasons[by],
  decimalComma: 'decimal comma',
  conventions: 'How positions are read',
  bottomX: 'X of the bottom',
  bottomY: 'Y of the bottom',
  bottomXs: { asSeenFromTop: 'As seen from the top', negated: 'Negated' },
  turnTop: 'Rotation, top',
  turnBottom: 'Rotation, bottom',
  turnCheck: ({ agreeing, of }: ImportFacts['sense']) =>
    of > 0
      ? `${agreeing} of ${of} parts turn like others of their package by their pads`
      : 'no pads to check it against',
  offsetX: 'Moved by x',
  offsetY: 'Moved by y',
  votes: ({ votes, of }: ImportFacts['offset']) => (of > 0 ? `${votes} of ${of} agree` : ''),
  panel: 'Panel',
  panels: { all: 'All boards', one: 'One board' },
  panelOf: (images: number) => `${images} boards with the same designators`,
  outline: 'Outline',
  outlineBy: 'By the files',
  outlineOf: (length: string, width: string, share: number) => `${length} × ${width}, holds ${Math.round(share)} %`,
  pin1Marks: 'dots: pin 1 of three pins or more',
  covers: 'Shields and frames',
  coverChoices: { can: 'Can over parts', frame: 'Frame', part: 'A part like the rest' },
  coverBy: {
    name: 'by its designator',
    words: 'by its package or value',
    over: 'because it lies over others',
    chosen: 'chosen',
  },
  coverSizeUnknown: 'size not told: draw it later',
  coverUnder: (parts: number) => (parts === 1 ? '1 part under it' : `${parts} parts under it`),
  sideWord: (word: string, count: number, chosen: boolean, known: boolean) =>
    `Side word ${word} (${count} ${count === 1 ? 'row' : 'rows'}, ${chosen ? 'chosen' : known ? 'as usual' : 'not known: top taken'})`,
  sideMeanings: { top: 'Top', bottom: 'Bottom', inner: 'Inner layer, left out' },
  top: 'Top',
  bottom: 'Bottom, seen from below',
} as const;
