import type { TableChoice, WindowImportChoices } from '../../../../shared-types/import-choices.ts';
import { anyColumns } from './any-table.ts';
import { type Column, type LengthWord, type Meaning, unitWord } from './columns.ts';
import { findHeading, type Heading } from './heading.ts';
import { guessColumns } from './headless.ts';
import { preambleSide, preambleUnit } from './preamble.ts';
import { isComment, type NumberedLine, type Row, readRows } from './rows.ts';
import { shapeOf, withChoice } from './shape.ts';
import { type SaidSides, saidSides, sideOfWord, wordsOfColumn } from './side-words.ts';
import type { Placement, PlacementTable, RowFault } from './types.ts';
import {
  readAngle,
  readLength,
  readMirror,
  readSide,
  type SideWord,
  saysNotFitted,
  usesDecimalComma,
  withoutTextMark,
} from './values.ts';

export const MM_PER: Readonly<Record<LengthWord, number>> = { mm: 1, mil: 0.0254, inch: 25.4, um: 0.001, cm: 10 };

const MAX_LINES = 200_000;
/** Rows that are shown. */
const SAMPLE_ROWS = 6;

type TableChoices = Pick<WindowImportChoices, 'tables' | 'sides' | 'sideWords'>;

/** Old systems end a text file with this character. */
const END_OF_FILE = String.fromCharCode(26);

/**
 * Reads a placement table of any dialect: with or without headings, delimited or fixed columns, preamble, comments.
 * Returns null when nothing in the text reads like one. Rows that cannot be read come back as faults, never vanish.
 */
export function readPlacements(
  text: string,
  file: string,
  encoding = 'UTF-8',
  encodingGuessed = false,
  choices: TableChoices = {},
): PlacementTable | null {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  if (lines.length > MAX_LINES) return null;
  const numbered = lines.map(
    (line, index): NumberedLine => ({ text: line.replaceAll(END_OF_FILE, ' ').replaceAll('\f', ' '), line: index + 1 }),
  );
  const filled = numbered.filter((line) => line.text.trim() !== '');
  const found = findHeading(filled.map((line) => line.text));
  const guessed = found ?? guessColumns(filled) ?? chosenColumns(filled, choices);
  if (guessed === null) return null;
  const shape = shapeOf(guessed);
  const choice = choices.tables?.[shape];
  const heading = withChoice(guessed, choice);
  const preamble = filled.flatMap(({ text }, index) => (index <= heading.index || isComment(text) ? [text] : []));
  const context = { ...readContext(filled.slice(heading.index + 1), heading, file), said: saidSides(choices, shape) };
  const chosenSide = context.hasSide ? undefined : choices.sides?.[file];
  const fileSide = chosenSide ?? preambleSide(preamble);
  const unit = tableUnit(heading.columns, preamble, context.rows, choice);
  const read = context.rows.map((row) => readRow(row, context, fileSide ?? context.sideByName, unit));
  const sideCells = context.rows.map((row) => context.cell(row, 'side') ?? '');
  return {
    file,
    encoding,
    encodingGuessed,
    separator: context.separator,
    headingLine: found ? filled[heading.index].line : null,
    columns: heading.columns,
    columnsChosen: heading !== guessed,
    shape,
    sample: context.rows.slice(0, SAMPLE_ROWS).map(({ cells }) => cells.map((cell) => cell.slice(0, 60))),
    ...unit,
    decimalComma: context.decimalComma,
    sideFrom: context.hasSide
      ? 'column'
      : chosenSide
        ? 'chosen'
        : fileSide
          ? 'preamble'
          : context.sideByName
            ? 'name'
            : 'assumed',
    sideWords: wordsOfColumn(sideCells, context.said),
    placements: read.flatMap(({ placement }) => (placement ? [placement] : [])),
    faults: read.flatMap(({ fault }) => (fault ? [fault] : [])),
  };
}

/** A table that nothing was told of by itself, once somebody said what its columns mean. */
function chosenColumns(lines: readonly NumberedLine[], { tables = {} }: TableChoices): Heading | null {
  const any = Object.keys(tables).length > 0 ? anyColumns(lines) : null;
  return any && tables[shapeOf(any)]?.columns ? any : null;
}

interface Context {
  readonly file: string;
  readonly separator: PlacementTable['separator'];
  readonly rows: readonly Row[];
  readonly decimalComma: boolean;
  readonly hasSide: boolean;
  /** The column marks the bottom alone: m or nothing. */
  readonly blankIsTop: boolean;
  readonly sideByName: 'top' | 'bottom' | null;
  readonly columns: readonly Column[];
  readonly cell: (row: Row, meaning: Meaning) => string | null;
}

type SidedContext = Context & { readonly said: SaidSides };

const LENGTH_MEANINGS: readonly Meaning[] = ['x', 'y', 'referenceX', 'referenceY', 'padX', 'padY', 'height'];

function readContext(lines: readonly NumberedLine[], heading: Heading, file: string): Context {
  const { columns } = heading;
  const index = new Map(columns.flatMap(({ meaning }, at): [Meaning, number][] => (meaning ? [[meaning, at]] : [])));
  const at = (cells: readonly string[], meaning: Meaning) => cells[index.get(meaning) ?? -1] ?? null;
  const isLength = (cell: string | null) => cell !== null && readLength(cell, cell.includes(',')) !== null;
  const isTurn = (cell: string | null) => cell !== null && readAngle(cell, true) !== null;
  const lengthColumns = LENGTH_MEANINGS.filter((meaning) => index.has(meaning));
  const fit = (cells: readonly string[]) => {
    if (!isLength(at(cells, 'x')) || !isLength(at(cells, 'y'))) return 0;
    if (index.has('rotation') && !isTurn(at(cells, 'rotation'))) return 0;
    if (index.has('side') && isLength(at(cells, 'side'))) return 0;
    const side = at(cells, 'side');
    return lengthColumns.filter((meaning) => isLength(at(cells, meaning))).length + (side && readSide(side) ? 1 : 0);
  };
  const { rows, separator } = readRows(lines, heading, fit);
  const lengths = rows.flatMap(({ cells }) => [at(cells, 'x') ?? '', at(cells, 'y') ?? '']);
  return {
    file,
    separator,
    rows,
    decimalComma: usesDecimalComma(lengths),
    blankIsTop: marksBottomAlone(rows.map(({ cells }) => at(cells, 'side') ?? '')),
    hasSide: index.has('side') || index.has('mirror'),
    sideByName: sideInName(file),
    columns,
    cell: (row, meaning) => at(row.cells, meaning),
  };
}

function marksBottomAlone(words: readonly string[]): boolean {
  const written = words.filter((word) => word !== '');
  return written.length > 0 && written.every((word) => /^(m|x|yes)$/i.test(word));
}

/** The name of a sheet says it better than that of its workbook. */
function sideInName(file: string): 'top' | 'bottom' | null {
  const sheet = / \[([^\]]*)\]$/.exec(file)?.[1];
  return (sheet === undefined ? null : sideInWords(sheet)) ?? sideInWords(file);
}

/** Words apart in a file name ('robot' and 'stop' say nothing), and the endings .mnt and .mnb. */
function sideInWords(file: string): 'top' | 'bottom' | null {
  if (/bottom|(^|[^a-z])(bot|back|solder|b)([^a-z]|$)|\.mnb$/i.test(file)) return 'bottom';
  return /(^|[^a-z])(top|front|t)([^a-z]|$)|\.mnt$/i.test(file) ? 'top' : null;
}

interface TableUnit {
  readonly unit: LengthWord | null;
  readonly unitFrom: PlacementTable['unitFrom'];
  readonly unitText: string;
  readonly mmPerUnit: number | null;
}

/** What was chosen wins (a unit behind a value counts for that value all the same), then units behind the values, then those of the headings, then the preamble. */
function tableUnit(
  columns: readonly Column[],
  preamble: readonly string[],
  rows: readonly Row[],
  choice: TableChoice | undefined,
): TableUnit {
  if (choice?.unit) return unitOf(choice.unit, 'chosen', '');
  const xColumn = columns.findIndex(({ meaning }) => meaning === 'x');
  const written = rows.map(({ cells }) => readLength(cells[xColumn] ?? '', true)?.unit ?? null);
  const suffix = written.find((unit) => unit !== null) ?? null;
  if (suffix && written.filter((unit) => unit !== null).length > rows.length / 2)
    return unitOf(suffix, 'value', suffix);
  const unitColumn = columns.findIndex(({ meaning }) => meaning === 'unit');
  const named = rows.map(({ cells }) => unitWord(cells[unitColumn] ?? '')).find((unit) => unit !== null);
  if (named) return unitOf(named, 'value', named);
  const headed = columns[xColumn]?.unit ?? null;
  if (headed) return unitOf(headed, 'heading', columns[xColumn].heading);
  const said = preambleUnit(preamble);
  return said
    ? unitOf(said.unit, 'preamble', said.text)
    : { unit: null, unitFrom: 'unknown', unitText: '', mmPerUnit: null };
}

function unitOf(unit: LengthWord, unitFrom: TableUnit['unitFrom'], unitText: string): TableUnit {
  return { unit, unitFrom, unitText, mmPerUnit: MM_PER[unit] };
}

function readRow(
  row: Row,
  context: SidedContext,
  fileSide: 'top' | 'bottom' | null,
  unit: TableUnit,
): { placement?: Placement; fault?: RowFault } {
  const fault = (kind: RowFault['fault']): RowFault => ({
    line: row.line,
    text: row.text.trim().slice(0, 120),
    fault: kind,
  });
  const x = readLength(context.cell(row, 'x') ?? '', context.decimalComma);
  const y = readLength(context.cell(row, 'y') ?? '', context.decimalComma);
  const textOf = (meaning: Meaning) => withoutTextMark(context.cell(row, meaning) ?? '');
  const refdes = textOf('refdes');
  if (!x || !y) return { fault: fault(row.cells.length < 3 ? 'cells' : 'position') };
  if (refdes === '') return { fault: fault('refdes') };
  const rowUnit = unitWord(context.cell(row, 'unit') ?? '');
  const scale = (read: NonNullable<typeof x>) => {
    const own = read.unit ?? rowUnit;
    return own && unit.mmPerUnit ? (read.value * MM_PER[own]) / unit.mmPerUnit : read.value;
  };
  const padX = readLength(context.cell(row, 'padX') ?? '', context.decimalComma);
  const padY = readLength(context.cell(row, 'padY') ?? '', context.decimalComma);
  const turn = readTurn(context, row);
  const side = readSideOf(context, row, fileSide);
  const height = readLength(context.cell(row, 'height') ?? '', context.decimalComma);
  const fittedColumn = context.columns.find(({ meaning }) => meaning === 'fitted');
  const placement: Placement = {
    refdes,
    x: scale(x),
    y: scale(y),
    rotation: turn ?? 0,
    side: side ?? 'top',
    packageName: withoutTextMark(context.cell(row, 'package') ?? context.cell(row, 'description') ?? ''),
    value: textOf('value') || textOf('description'),
    heightMm:
      height && height.value > 0 && unit.mmPerUnit
        ? height.value * (height.unit ? MM_PER[height.unit] : unit.mmPerUnit)
        : null,
    ...(height && height.value > 0 && !unit.mmPerUnit ? { heightUnits: height.value } : {}),
    pad1: padX && padY ? { x: scale(padX), y: scale(padY) } : null,
    fitted: !fittedColumn || !saysNotFitted(fittedColumn.heading, context.cell(row, 'fitted') ?? ''),
    file: context.file,
    line: row.line,
  };
  if (side === null) {
    const word = context.cell(row, 'side') ?? context.cell(row, 'mirror') ?? '';
    return { placement, fault: { ...fault('side'), word } };
  }
  return turn === null ? { placement, fault: fault('rotation') } : { placement };
}

/** 0 when the table has no rotation column; null when the cell is no angle. */
function readTurn(context: Context, row: Row): number | null {
  const cell = context.cell(row, 'rotation');
  return cell === null
    ? context.columns.some(({ meaning }) => meaning === 'rotation')
      ? null
      : 0
    : readAngle(cell, context.decimalComma);
}

function readSideOf(context: SidedContext, row: Row, fileSide: 'top' | 'bottom' | null): SideWord | null {
  const embedded = context.cell(row, 'embedded');
  if (embedded && readSide(embedded) !== 'top' && readSide(embedded) !== 'bottom') return 'inner';
  const side = context.cell(row, 'side');
  if (side !== null && side !== '') return sideOfWord(side, context.said);
  const mirror = context.cell(row, 'mirror');
  if (mirror !== null) return readMirror(mirror);
  if (!context.hasSide || context.blankIsTop) return fileSide ?? 'top';
  return fileSide;
}
