import { type ImportedBoard, importBoard } from '../../../main/document/imports/import-board.ts';
import { boardFolder, filesOf } from './boards-folder.ts';

/** What each import came to, a line each, for the log. */
export const rows: string[] = [];
const done = new Map<string, ImportedBoard>();

/** The board of a folder of outside files, read once; null where the folder is absent. */
export function importFolder(name: string): ImportedBoard | null {
  const known = done.get(name);
  if (known) return known;
  const folder = boardFolder(name);
  if (!folder) return null;
  const files = filesOf(folder);
  const start = performance.now();
  const result = importBoard(files);
  const seconds = (performance.now() - start) / 1000;
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  rows.push(tableRow(name, result.value, seconds));
  done.set(name, result.value);
  return result.value;
}

function tableRow(name: string, { report }: ImportedBoard, seconds: number): string {
  const { counts, outline, offset, check, sense } = report;
  const megabytes = Math.round(process.memoryUsage().rss / 1e6);
  const pads = check
    ? `side ${check.side.right}/${check.withPads - check.side.throughHole}, middle ${check.centre.within}/${check.withPads}, turn ${check.turn.manyPins.right}/${check.turn.manyPins.of} and two-pad ${check.turn.twoPads.right}/${check.turn.twoPads.of}, pads only ${check.padsOnly.length}`
    : 'no pads with references';
  const warnings = report.notes
    .filter(({ weight }) => weight === 'warn')
    .map(({ code, refdes }) => (refdes ? `${code} ${refdes.length}` : code));
  return [
    name.padEnd(14),
    `${counts.top}/${counts.bottom}`.padEnd(8),
    `${outline.lengthMm.toFixed(2)} x ${outline.widthMm.toFixed(2)} (${outline.cutouts} cutouts, ${outline.why})`.padEnd(
      40,
    ),
    `offset ${offset.by} ${offset.votes}/${offset.of}`.padEnd(28),
    `turns ${sense.turnsBy} ${sense.agreeing}/${sense.of}`.padEnd(24),
    pads,
    `[${warnings.join(', ')}]`,
    `${seconds.toFixed(2)} s, ${megabytes} MB`,
  ].join(' | ');
}
