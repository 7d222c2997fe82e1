/** Cells of a pasted table: from a spreadsheet (tabs), or with semicolons or commas; quotes as spreadsheets write them. */
export function splitCells(text: string): string[][] {
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n+$/, '');
  if (lines.trim() === '') return [];
  const first = lines.split('\n', 1)[0];
  const delimiter = lines.includes('\t') ? '\t' : first.includes(';') ? ';' : ',';
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  const end = () => {
    rows[rows.length - 1].push(cell.trim());
    cell = '';
  };
  for (let at = 0; at < lines.length; at++) {
    const sign = lines[at];
    if (quoted) {
      if (sign === '"' && lines[at + 1] === '"') {
        cell += '"';
        at++;
      } else if (sign === '"') quoted = false;
      else cell += sign;
    } else if (sign === '"' && cell.trim() === '') {
      cell = '';
      quoted = true;
    } else if (sign === delimiter) end();
    else if (sign === '\n') {
      end();
      rows.push([]);
    } else cell += sign;
  }
  end();
  return rows;
}

/** A table with pasted rows laid in from a cell on; it grows as it needs. Columns beyond the table are left out. */
export function pasteInto(
  table: readonly (readonly string[])[],
  at: { row: number; column: number },
  pasted: readonly (readonly string[])[],
  columns: number,
): string[][] {
  const rows = Math.max(table.length, at.row + pasted.length);
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => {
      const fresh = pasted[row - at.row]?.[column - at.column];
      const inside = row >= at.row && column >= at.column;
      return (inside ? fresh : undefined) ?? table[row]?.[column] ?? '';
    }),
  );
}

export const isBlank = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === '');

const FITTED = /^(?:1|fitted|fit|pop(?:ulated)?|yes|y|high|h|up|on|\u2022|\u2713|\u2714)$/i;
const EMPTY = /^(?:0|empty|dn[pfi]|n[fpc]|no|n|low|l|down|off|open|none|not fitted|-|\u2013|\u2014)$/i;
const EITHER = /^(?:x|\*|any|either)$/i;

/** One place of a code as people write it; null: none of them. */
export function levelOf(cell: string): '1' | '0' | 'x' | null {
  const text = cell.trim();
  if (FITTED.test(text)) return '1';
  if (EMPTY.test(text)) return '0';
  return EITHER.test(text) ? 'x' : null;
}

/** A plain figure, with a point or a comma; null: none. */
export function figureOf(cell: string): number | null {
  const text = cell
    .trim()
    .replace(/\s*m?[vV%]$/, '')
    .replace(',', '.');
  return /^-?\d+(?:\.\d+)?$/.test(text) ? Number(text) : null;
}
