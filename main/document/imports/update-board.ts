import type { Board, Part } from '../../../shared-types/board.ts';
import { boxOfContour } from '../../../shared-types/contour/edges.ts';
import type { ImportReport } from '../../../shared-types/import-report.ts';
import { type Result, succeed } from '../../../shared-types/problem.ts';
import type { Bill, BillLine } from './bill/read-bill.ts';
import { sayOtherwise } from './build/bills.ts';
import { inputProblem } from './build/input-problem.ts';
import { fileLine } from './build/report.ts';
import { type GivenFile, type Recognised, recognise } from './files/recognise.ts';
import { unpackFiles } from './files/unpack.ts';
import { type ImportChoices, type ImportedBoard, importBoard } from './import-board.ts';

/**
 * Files for a board that is known already. They are read as for a new one; bills of materials alone, which give no board by
 * themselves, are laid on the known one. Errors: those of the import, also where a bill lies beside files that failed.
 */
export function importForUpdate(
  files: readonly GivenFile[],
  choices: ImportChoices,
  known: Board,
): Result<ImportedBoard> {
  const imported = importBoard(files, choices);
  if (imported.ok) return imported;
  const unpacked = unpackFiles(files);
  if (!unpacked.ok) return imported;
  const recognised = unpacked.value.files.map((file) => recognise(file, choices));
  const bills = recognised.flatMap((file) => (file.kind === 'bill' ? [file.bill] : []));
  const failed = recognised.find(({ kind }) =>
    /^(placements|design|brokenDesign|brokenDrawing|brokenLayer)$/.test(kind),
  );
  if (bills.length === 0) return imported;
  // Of a broken file among others the import says only that none places anything.
  const nothing = inputProblem(recognised).code === imported.problem.code;
  if (!nothing) return imported;
  if (failed) return { ok: false, problem: inputProblem([failed]) };
  return succeed(billsOnBoard(recognised, bills, known));
}

function billsOnBoard(files: readonly Recognised[], bills: readonly Bill[], known: Board): ImportedBoard {
  const lines = new Map(bills.flatMap((bill) => [...bill.lines]));
  const parts = known.parts.map((part) => withLine(part, lines.get(part.refdes)));
  const drawnFrom = bills.map(({ file }) => file).join(', ');
  const board = { ...known, parts, source: { ...known.source, drawnFrom: drawnFrom.slice(0, 500) } };
  return { board, report: billReport(files, lines, board) };
}

/** A bill's value wins where it says another one; its package name is taken only where none is known, because it is seldom a footprint's. */
function withLine(part: Part, line: BillLine | undefined): Part {
  if (!line) return part;
  const value = line.value && (part.value === '' || sayOtherwise(part, line)) ? line.value.slice(0, 200) : part.value;
  const name = part.package.name || line.packageName.slice(0, 200);
  return { ...part, value, fitted: line.fitted, package: { ...part.package, name } };
}

/** The report of an import that read no drawing. */
function billReport(files: readonly Recognised[], lines: ReadonlyMap<string, BillLine>, board: Board): ImportReport {
  const onSide = (side: Part['side']) => board.parts.filter((part) => part.side === side).length;
  const names = board.parts.map(({ refdes }) => refdes);
  const box = boxOfContour(board.outline);
  const known = new Set(names);
  const missing = [...lines].flatMap(([refdes, { fitted }]) => (fitted && !known.has(refdes) ? [refdes] : []));
  const unlisted = names.filter((refdes) => !lines.has(refdes));
  const none = { xMm: 0, yMm: 0 };
  return {
    files: files.map(fileLine),
    tables: [],
    drawings: [],
    counts: { top: onSide('top'), bottom: onSide('bottom'), inner: 0, unread: 0, legend: 0 },
    outline: {
      file: null,
      lengthMm: box.maxX - box.minX,
      widthMm: box.maxY - box.minY,
      cutouts: board.cutouts.length,
      ...{ arcs: 0, why: 'parts', sharePercent: 100, others: [] },
    },
    offset: { ...none, by: 'own', votes: 0, of: 0 },
    shift: none,
    sense: {
      ...{ xNegated: false, yNegated: false, xBy: 'usual', top: 'same', bottom: 'same' },
      ...{ turnsBy: 'none', turnsChosen: false, agreeing: 0, of: 0 },
    },
    panel: null,
    check: null,
    covers: [],
    told: {
      // A bill says nothing of places: no part is gone because of it.
      ...{ sides: [], outline: false, turns: true, layers: false, heights: [], doubles: [] },
      fitted: names.filter((refdes) => lines.has(refdes)),
      sizeless: names,
      unplaced: missing,
    },
    notes: [
      ...(missing.length > 0 ? [{ weight: 'warn', code: 'bill-missing', refdes: missing } as const] : []),
      ...(unlisted.length > 0 ? [{ weight: 'note', code: 'bill-unlisted', refdes: unlisted } as const] : []),
    ],
  };
}
