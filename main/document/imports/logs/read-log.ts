import Papa from 'papaparse';
import { fail, type Result, succeed } from '../../../../shared-types/problem.ts';
import { decodeText } from '../text/decode-text.ts';
import { readTemperature, readTime, timeUnitOf, toCelsius, unitOfHeading } from './cells.ts';

/** One column of a log: its samples in s from the log's first row and C. Gaps are left out. */
export type LogColumn = { name: string; samples: { atS: number; celsius: number }[]; gaps: number };
export type TemperatureLog = { columns: LogColumn[]; rows: number; seconds: number };

const DAY_S = 86400;
/** Temperatures that a run on a bench can show, C; what lies outside is a gap (an open bead, an overload mark). */
const BENCH_C = { from: -40, to: 700 };

/** In this order: a comma may be the decimal sign of cells that something else parts. */
const DELIMITERS = ['\t', ';', '|', ','] as const;

/** Rows by the delimiter that makes most of them rows of figures; lines before the heading may hold others. */
function rowsOf(text: string): string[][] {
  const parted = DELIMITERS.map((delimiter) =>
    Papa.parse<string[]>(text.trim(), { delimiter, skipEmptyLines: 'greedy' }).data.map((row) =>
      row.map((cell) => cell.trim()),
    ),
  );
  const figures = (rows: readonly string[][]) => rows.filter(isDataRow).length;
  return parted.reduce((best, rows) => (figures(rows) > figures(best) ? rows : best));
}

/** True for a cell that looks like data: a number, a temperature or a time. */
const isData = (cell: string): boolean =>
  /^[+-]?[\d.,:']+\s*(°?\s*[cfk]|s|min|ms)?$/i.test(cell) || /\d:\d\d/.test(cell);

/** A row whose filled cells are mostly data, with at least two of them. */
function isDataRow(row: readonly string[]): boolean {
  const filled = row.filter((cell) => cell !== '');
  return filled.length >= 2 && filled.filter(isData).length > filled.length / 2;
}

/** A comma is the decimal sign when it stands between digits of a cell and no cell uses a point so. */
function decimalOf(rows: readonly string[][]): '.' | ',' {
  const cells = rows.slice(0, 200).flat();
  const commas = cells.filter((cell) => /\d,\d/.test(cell)).length;
  return commas > cells.filter((cell) => /^[+-]?\d+\.\d/.test(cell)).length ? ',' : '.';
}

/** The column of times: named so, else the first one that only ever rises. */
function timeColumn(headings: readonly string[], times: (column: number) => (number | null)[]): number {
  const named = headings.findIndex((heading) => /\b(time|elapsed|zeit|seconds?|sec|temps|hora)\b|^t\b/i.test(heading));
  if (named >= 0) return named;
  return headings.findIndex((_, column) => {
    const seconds = times(column).filter((one) => one !== null);
    return seconds.length > 2 && seconds.every((one, row) => row === 0 || one > seconds[row - 1]!);
  });
}

/** Seconds from the first row on; a clock that passes midnight goes on. */
function fromStart(seconds: readonly (number | null)[]): (number | null)[] {
  let days = 0;
  let before = Number.NEGATIVE_INFINITY;
  const first = seconds.find((one) => one !== null) ?? 0;
  return seconds.map((one) => {
    if (one === null) return null;
    if (one + days < before - DAY_S / 2) days += DAY_S;
    before = one + days;
    return before - first;
  });
}

/**
 * Reads a temperature log: delimited text with any column names. Units in heading or cell, decimal comma, gaps, times
 * in seconds (or as the heading says), m:s, h:m:s, or a clock. Problems: not-text, wrong-format (what is missing).
 */
export function readLog(bytes: Uint8Array, file: string): Result<TemperatureLog> {
  const decoded = decodeText(bytes);
  if (!decoded.ok) return fail('not-text', { file });
  const rows = rowsOf(decoded.text);
  const first = rows.findIndex(isDataRow);
  const expected = 'a temperature log: a column of times and columns of temperatures';
  if (first < 0) return fail('wrong-format', { file, detail: { expected, found: 'a text without rows of figures' } });
  const data = rows.slice(first);
  const width = Math.max(...data.map((row) => row.length));
  const headings = Array.from({ length: width }, (_, column) => rows[first - 1]?.[column] || `column ${column + 1}`);
  const decimal = decimalOf(data);
  const timesIn = (column: number) => {
    const cells = data.map((row) => row[column] ?? '');
    // A day has 24 hours: more than that before the colon counts minutes, and so does a first cell of 0:00.
    const twoParts =
      cells.some((cell) => /^(\d{3}|2[4-9]|[3-9]\d):/.test(cell)) || /^0+:/.test(cells[0]!) ? 'm:s' : 'h:m';
    return cells.map((cell) => readTime(cell, decimal, timeUnitOf(headings[column]!), twoParts));
  };
  const time = timeColumn(headings, timesIn);
  if (time < 0) return fail('wrong-format', { file, detail: { expected, found: 'no column of times' } });
  const seconds = fromStart(timesIn(time));
  const columns = headings.flatMap((name, column): LogColumn[] => {
    if (column === time) return [];
    const read = samplesOf(data, column, name, seconds, decimal);
    return read.samples.length > 0 ? [{ name, ...read }] : [];
  });
  if (columns.length === 0) return fail('wrong-format', { file, detail: { expected, found: 'no temperatures' } });
  return succeed({ columns, rows: data.length, seconds: Math.max(0, ...seconds.filter((one) => one !== null)) });
}

function samplesOf(
  data: readonly string[][],
  column: number,
  heading: string,
  seconds: readonly (number | null)[],
  decimal: '.' | ',',
): Pick<LogColumn, 'samples' | 'gaps'> {
  const unit = unitOfHeading(heading);
  const samples: LogColumn['samples'] = [];
  data.forEach((row, index) => {
    const atS = seconds[index];
    const read = readTemperature(row[column] ?? '', decimal);
    if (atS === null || atS === undefined || !read) return;
    const celsius = toCelsius(read, unit);
    if (celsius >= BENCH_C.from && celsius <= BENCH_C.to) samples.push({ atS, celsius });
  });
  return { samples, gaps: data.length - samples.length };
}
