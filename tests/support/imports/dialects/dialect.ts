import type { Draws } from './random.ts';

/** What a column of the written table holds. */
export type Field =
  | 'refdes'
  | 'value'
  | 'package'
  | 'x'
  | 'y'
  | 'referenceX'
  | 'referenceY'
  | 'padX'
  | 'padY'
  | 'rotation'
  | 'side'
  | 'mirror'
  | 'embedded'
  | 'height'
  | 'other';

export type Column = readonly [heading: string, field: Field];
export type Unit = 'mm' | 'mil' | 'inch';
export const MM_OF: Readonly<Record<Unit, number>> = { mm: 1, mil: 0.0254, inch: 25.4 };

/** How one table is written. Headings are those of ../shared/boards/README.md. */
export interface Dialect {
  readonly columns: readonly Column[];
  readonly headed: boolean;
  /** Sign that puts the row of headings into a comment. */
  readonly comment: '' | '# ' | '## ';
  readonly parting: ',' | ';' | '\t' | '!' | '|' | 'blanks' | 'columns';
  readonly quotes: 'none' | 'needed' | 'all' | 'texts';
  readonly preamble: readonly string[];
  readonly afterHeading: readonly string[];
  readonly encoding: 'ascii' | 'utf8' | 'utf8-bom' | 'latin1' | 'utf16le' | 'utf16be' | 'utf16le-bare' | 'utf16be-bare';
  readonly lineEnd: '\n' | '\r\n';
  readonly decimalComma: boolean;
  readonly digits: number;
  readonly unit: Unit;
  readonly unitIn: 'heading' | 'suffix' | 'preamble' | 'nowhere';
  readonly sides: SideWords;
  readonly negatedX: boolean;
  readonly negatedY: boolean;
  readonly turns: 'same' | 'opposite';
  readonly bottomTurns: 'same' | 'opposite' | 'fromHalfTurn' | 'plusHalfTurn';
  /** One table, or one for each side; then the side stands in the file's name, its preamble, or its column. */
  readonly files: 'one' | 'two';
  readonly sideIn: 'column' | 'name' | 'preamble';
  readonly withLayers: boolean;
}

export type SideWords = readonly [top: string, bottom: string];

const WRITTEN: readonly (readonly Column[])[] = [
  table('Ref refdes|Val value|Package package|PosX x|PosY y|Rot rotation|Side side'),
  table(
    'Designator refdes|Footprint package|Mid X x|Mid Y y|Ref X referenceX|Ref Y referenceY|Pad X padX|Pad Y padY|TB side|Rotation rotation|Comment value',
  ),
  table(
    'Designator refdes|Footprint package|Mid X x|Mid Y y|Ref X referenceX|Ref Y referenceY|Pad X padX|Pad Y padY|Layer side|Rotation rotation|Comment value',
  ),
  table(
    'Designator refdes|Comment value|Layer side|Footprint package|Center-X x|Center-Y y|Rotation rotation|Description other',
  ),
  table(
    'Designator refdes|Comment value|Layer side|Footprint package|Center-X x|Center-Y y|Rotation rotation|Description other|Height height',
  ),
  table(
    'REFDES refdes|COMP_DEVICE_TYPE other|COMP_VALUE value|COMP_TOL other|COMP_PACKAGE package|SYM_X x|SYM_Y y|SYM_ROTATE rotation|SYM_MIRROR mirror',
  ),
  table(
    'refdes refdes|symbol_x x|symbol_y y|rotation rotation|mirror mirror|symbol_name package|embedded_layer embedded',
  ),
  table('RefDes refdes|Description other|Value value|X x|Y y|rotation rotation|top/bottom side'),
  table('Designator refdes|Mid X x|Mid Y y|Layer side|Rotation rotation'),
  table('Designator refdes|Val value|Package package|Mid X x|Mid Y y|Rotation rotation|Layer side'),
  table(
    'Designator refdes|Value value|Device other|Package package|Position X x|Position Y y|Rotation rotation|Side side',
  ),
  table('RefDes refdes|Name package|X x|Y y|Side side|Rotate rotation|Value value'),
  table('Name refdes|Component value|Side side|Centre X x|Centre Y y|Rotation rotation'),
  table('ref des refdes|value value|package package|x x|y y|rotation rotation|side side'),
  table('name refdes|x x|y y|angle rotation|value value|package package'),
];

function table(text: string): Column[] {
  return text.split('|').map((column): Column => {
    const cut = column.lastIndexOf(' ');
    return [column.slice(0, cut), column.slice(cut + 1) as Field];
  });
}

/** Columns in any order, under further headings of the list. */
const ALIASES: Partial<Record<Field, readonly string[]>> = {
  refdes: ['Ref', 'RefDes', 'Designator', 'Reference', 'Part', 'Component'],
  x: ['X', 'PosX', 'Mid X', 'Center-X', 'Centre X', 'Position X', 'Ref-X'],
  y: ['Y', 'PosY', 'Mid Y', 'Center-Y', 'Centre Y', 'Position Y', 'Ref-Y'],
  rotation: ['Rot', 'Rotation', 'Rotate', 'Angle'],
  side: ['Side', 'Layer', 'TB'],
  package: ['Package', 'Footprint', 'Pattern'],
  value: ['Value', 'Val', 'Comment'],
};

const SIDES: readonly SideWords[] = [
  ['top', 'bottom'],
  ['TOP', 'BOTTOM'],
  ['Top', 'Bottom'],
  ['T', 'B'],
  ['TopLayer', 'BottomLayer'],
  ['F.Cu', 'B.Cu'],
];
const MIRRORS: readonly SideWords[] = [
  ['NO', 'YES'],
  ['no', 'yes'],
  ['', 'm'],
  ['0', '1'],
];

const HEADLESS = table('1 refdes|2 x|3 y|4 rotation|5 value|6 package');

function columnsFor(draws: Draws, headed: boolean): readonly Column[] {
  if (!headed) return HEADLESS;
  if (draws.chance(0.6)) return draws.one(WRITTEN);
  const fields = draws.shuffled(Object.keys(ALIASES) as Field[]);
  const columns = fields.map((field): Column => [draws.one(ALIASES[field] ?? []), field]);
  // x and y under one kind of heading, as every program writes them.
  const xs = ALIASES.x ?? [];
  const kind = xs.indexOf(columns.find(([, field]) => field === 'x')?.[0] ?? '');
  return columns.map(
    ([heading, field]): Column => (field === 'y' ? [ALIASES.y?.[kind] ?? 'Y', field] : [heading, field]),
  );
}

function unitHeading(draws: Draws, heading: string, unit: Unit): string {
  const word = unit === 'inch' ? draws.one(['in', 'inch']) : unit;
  return draws.chance(0.5) ? `${heading}(${word})` : `${heading} (${word})`;
}

function unitLine(draws: Draws, unit: Unit): string {
  const plural = unit === 'mil' ? 'mils' : unit;
  return draws.one([
    `Units used: ${unit}`,
    `## Unit = ${unit}, Angle = deg.`,
    `UUNITS = ${plural.toUpperCase()}`,
    `# X,Y in ${plural}.  rotation in degrees.`,
  ]);
}

const LINES = [
  'Placement of an invented board',
  '### Positions - created on 2026-01-02 ###',
  'Date:       02/01/26',
  'Time:       09:56',
  'Revision:   B2',
  'Variant:    Production',
  '========================================',
  '',
  '# Title: (unknown)',
  '""',
  'File Design Information:',
];

const LENGTHS: readonly Field[] = ['x', 'y', 'referenceX', 'referenceY', 'padX', 'padY', 'height'];
const hasBlanks = (columns: readonly Column[]): boolean => columns.some(([heading]) => heading.includes(' '));

/** One dialect; what cannot stand together is not put together. */
export function drawDialect(draws: Draws): Dialect {
  const headed = draws.chance(0.93);
  const plain = columnsFor(draws, headed);
  const has = (field: Field): boolean => plain.some(([, one]) => one === field);
  const hasSide = has('side') || has('mirror');
  const files = hasSide && draws.chance(0.7) ? 'one' : 'two';
  const sideIn = hasSide ? 'column' : draws.one(['name', 'preamble'] as const);
  const commented = headed && draws.chance(0.2);
  const parting = commented
    ? draws.one([',', 'blanks', 'columns', '!'] as const)
    : draws.one([',', ',', ';', '\t', '!', '|', 'blanks', 'columns', 'columns'] as const);
  const unit = draws.one(['mm', 'mm', 'mil', 'inch'] as const);
  const unitIn = headed
    ? draws.one(['heading', 'suffix', 'preamble', 'preamble', 'nowhere'] as const)
    : draws.one(['suffix', 'nowhere'] as const);
  const headings = plain.map(([heading, field]): Column => {
    const withUnit = unitIn === 'heading' && LENGTHS.includes(field) ? unitHeading(draws, heading, unit) : heading;
    return [withUnit, field];
  });
  // Words of a heading in a table parted by single blanks would be columns of their own.
  const columns =
    parting === 'blanks'
      ? headings.map(
          ([heading, field]): Column => [hasBlanks([[heading, field]]) ? heading.replaceAll(' ', '') : heading, field],
        )
      : headings;
  const quotes =
    parting === 'blanks' || parting === 'columns' ? 'none' : draws.one(['none', 'needed', 'all', 'texts'] as const);
  const decimalComma = draws.chance(0.2) && (parting !== ',' || quotes !== 'none');
  const preamble = headed ? Array.from({ length: draws.one([0, 0, 3, 7, 12]) }, () => draws.one(LINES)) : [];
  if (unitIn === 'preamble') preamble.splice(draws.whole(0, preamble.length), 0, unitLine(draws, unit));
  const withLayers = draws.chance(0.3);
  return {
    columns,
    headed,
    comment: commented ? draws.one(['# ', '## '] as const) : '',
    parting,
    quotes: quotes === 'none' ? 'none' : quotes,
    preamble,
    afterHeading: headed ? draws.one([[], [], [''], ['""'], ['', '']]) : [],
    encoding: draws.one([
      'ascii',
      'ascii',
      'utf8',
      'utf8-bom',
      'latin1',
      'utf16le',
      'utf16be',
      'utf16le-bare',
      'utf16be-bare',
    ] as const),
    lineEnd: draws.one(['\n', '\r\n'] as const),
    decimalComma,
    digits: unit === 'inch' ? draws.whole(4, 6) : draws.whole(2, 4) + (unit === 'mm' ? 1 : 0),
    unit,
    unitIn,
    sides: draws.one(has('side') ? SIDES : MIRRORS),
    negatedX: draws.chance(0.25),
    negatedY: draws.chance(0.1),
    turns: withLayers && draws.chance(0.3) ? 'opposite' : 'same',
    bottomTurns: withLayers ? draws.one(['same', 'opposite', 'fromHalfTurn', 'plusHalfTurn'] as const) : 'same',
    files,
    sideIn,
    withLayers,
  };
}
