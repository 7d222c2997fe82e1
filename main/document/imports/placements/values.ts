import { type LengthWord, unitWord } from './columns.ts';

export interface ReadLength {
  readonly value: number;
  /** Unit written behind the number, if any. */
  readonly unit: LengthWord | null;
}

const LENGTH = /^([+-]?[\d.,]+(?:[eE][+-]?\d+)?)\s*([a-zA-Zµμ]*)"?$/;

/** `885.826mil`, `12,5`, `-3.0 mm` to a number and its unit; null when it is no length. */
export function readLength(cell: string, decimalComma: boolean): ReadLength | null {
  const match = LENGTH.exec(cell.trim());
  if (!match) return null;
  const unit = match[2] === '' ? null : unitWord(match[2]);
  if (match[2] !== '' && unit === null) return null;
  const value = readDigits(match[1], decimalComma);
  return Number.isFinite(value) ? { value, unit } : null;
}

function readDigits(text: string, decimalComma: boolean): number {
  if (!text.includes(',')) return Number(text);
  if (text.includes('.')) {
    const commaLast = text.lastIndexOf(',') > text.lastIndexOf('.');
    return Number(commaLast ? text.replaceAll('.', '').replace(',', '.') : text.replaceAll(',', ''));
  }
  return Number(decimalComma ? text.replace(',', '.') : text.replaceAll(',', ''));
}

/** `90.00`, `360`, `-90°`, `22,5 deg` in degrees; null when it is no angle. */
export function readAngle(cell: string, decimalComma: boolean): number | null {
  const bare = cell.trim().replace(/\s*(°|º|deg\.?|degrees?)$/i, '');
  if (!/^[+-]?[\d.,]+(?:[eE][+-]?\d+)?$/.test(bare)) return null;
  const value = readDigits(bare, decimalComma);
  return Number.isFinite(value) ? value : null;
}

/** A comma is the decimal mark when numbers carry one comma and no point, and never three digits behind it only. */
export function usesDecimalComma(cells: readonly string[]): boolean {
  let commas = 0;
  let points = 0;
  for (const cell of cells) {
    if (/^\s*[+-]?\d*,\d+\s*[a-zA-Zµ]*\s*$/.test(cell)) commas++;
    else if (/\d*\.\d+/.test(cell)) points++;
  }
  return commas > points;
}

export type SideWord = 'top' | 'bottom' | 'inner';

const TOP =
  'top t toplayer topside fcu front f component componentside comp primary primaryside toplay layer1 l1 up upper oben bestuckungsseite dessus';
const BOTTOM =
  'bottom bot b bottomlayer botlayer bottomside bcu back solder solderside sold secondary secondaryside down lower unten lotseite dessous';
const SIDES = new Map<string, SideWord>([
  ...TOP.split(' ').map((word): [string, SideWord] => [word, 'top']),
  ...BOTTOM.split(' ').map((word): [string, SideWord] => [word, 'bottom']),
]);

/** Side words in any case and with any punctuation; inner layers by their usual names; null when unknown. */
export function readSide(cell: string): SideWord | null {
  const word = cell
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '');
  const known = SIDES.get(word);
  if (known) return known;
  return /^(in|inner|inr|mid|midlayer|internal|internalplane|layer|l|signal)\d+(cu)?$/.test(word) || word === 'inner'
    ? 'inner'
    : null;
}

/** A mirror column: marked parts lie on the bottom. */
export function readMirror(cell: string): SideWord | null {
  const word = cell.trim().toLowerCase();
  if (['', 'no', 'n', 'false', '0', '-', 'none', 'not mirrored'].includes(word)) return 'top';
  return ['yes', 'y', 'true', '1', 'm', 'x', 'mirror', 'mirrored'].includes(word) ? 'bottom' : readSide(cell);
}

/** Words that say by themselves, in any column, that the position stays empty. */
export function namesEmpty(cell: string): boolean {
  return /^(dnp|dnf|dni|dns|n\/f|no ?fit|no ?stuff|un(populated|fitted)|not (fitted|mounted|populated|placed)|do not (place|populate|fit|stuff|install|mount))$/i.test(
    cell.trim(),
  );
}

/** Words in a `fitted` or `DNP` column that say the position stays empty. */
export function saysNotFitted(heading: string, cell: string): boolean {
  const word = cell.trim().toLowerCase();
  if (namesEmpty(word)) return true;
  const negative = /dn[pfis]|not/i.test(heading);
  return negative ? ['1', 'yes', 'true', 'y', 'x'].includes(word) : ['0', 'no', 'false', 'n'].includes(word);
}

export function looksLikeRefdes(cell: string): boolean {
  return /^[A-Za-z]{1,8}[-_]?\d+[A-Za-z0-9_.\-/]*$/.test(cell.trim());
}

/** A spreadsheet's mark for 'this is text', an apostrophe before what might be a formula, taken off: csv.ts of the exports sets it. */
export function withoutTextMark(cell: string): string {
  return cell.replace(/^(\s*)'(?=\s*'*\s*[=+\-@\t\r\n\0\uFF1D\uFF0B\uFF0D\uFF20])/, '$1');
}
