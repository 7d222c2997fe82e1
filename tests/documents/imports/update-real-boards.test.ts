import { expect, test } from 'vitest';
import { placementsCsv } from '../../../main/document/exports/placements-csv.ts';
import { type GivenFile, importBoard } from '../../../main/document/imports/import-board.ts';
import { importForUpdate } from '../../../main/document/imports/update-board.ts';
import type { Board } from '../../../shared-types/board.ts';
import { boardIn } from '../../../shared-types/rules/board-frame.ts';
import { compareBoards } from '../../../shared-types/rules/board-update/compare.ts';
import { usuallyTaken } from '../../../shared-types/rules/board-update/decide.ts';
import { uniforms } from '../../support/heat/random.ts';
import { boardFolder, filesOf } from './boards-folder.ts';

/** Placement tables of each board alone, as a newer one would come; the ticket has them with all layers. */
const BOARDS = [
  { name: 'kvision', table: /^Pick/ },
  { name: 'debug-adapter', table: /^Pick/ },
  { name: 'butterstick', table: /pos\.csv$/ },
] as const;

const tickets = new Map<string, Board>();

/** The board as the ticket has it, from all files of its folder; read once. */
function ticketOf(name: string, files: readonly GivenFile[]): Board {
  const known = tickets.get(name);
  if (known) return known;
  const imported = importBoard(files);
  if (!imported.ok) throw new Error(JSON.stringify(imported.problem));
  tickets.set(name, imported.value.board);
  return imported.value.board;
}

function sourceOf(files: readonly GivenFile[], ticket: Board) {
  const imported = importForUpdate(files, {}, ticket);
  if (!imported.ok) throw new Error(JSON.stringify(imported.problem));
  return { board: imported.value.board, told: imported.value.report.told };
}

for (const { name, table } of BOARDS) {
  const folder = boardFolder(name);
  const there = folder ? test : test.skip;

  there(`${name}: its own files change nothing, its placements alone nothing for sure`, () => {
    const files = filesOf(folder as string);
    const ticket = ticketOf(name, files);
    const placements = files.filter((file) => table.test(file.name));
    const changes = compareBoards(ticket, sourceOf(placements, ticket));
    expect(changes.common).toBe(ticket.parts.length);
    expect([changes.gone, changes.added, changes.outline]).toEqual([[], [], null]);
    const sure = changes.changed.filter((change) => change.aspects.some((one) => usuallyTaken(ticket, change, one)));
    expect(sure).toEqual([]);
  });

  there(`${name}: turned, moved and with twelve parts changed, exactly those are found`, () => {
    const ticket = ticketOf(name, filesOf(folder as string));
    const random = uniforms(name.length);
    const chosen = new Set<string>();
    while (chosen.size < 12) chosen.add(ticket.parts[Math.floor(random() * ticket.parts.length)].refdes);
    const [moved, gone, valued] = [0, 4, 8].map((from) => [...chosen].slice(from, from + 4).sort());
    const parts = ticket.parts
      .filter(({ refdes }) => !gone.includes(refdes))
      .map((part) => (moved.includes(part.refdes) ? { ...part, x: part.x + 6, y: part.y - 25 } : part))
      .map((part) => (valued.includes(part.refdes) ? { ...part, value: 'changed' } : part));
    const lying = boardIn({ mirror: false, quarters: 1, by: { x: 200, y: -31.7 } }, { ...ticket, parts });
    const source = sourceOf([{ name: 'newer-pos.csv', bytes: placementsCsv(lying) }], ticket);
    const changes = compareBoards(ticket, source);
    const named = (aspect: string) =>
      changes.changed.flatMap(({ refdes, aspects }) => (aspects.some((one) => one === aspect) ? [refdes] : [])).sort();
    expect([named('place'), named('value'), changes.gone.map(({ refdes }) => refdes).sort()]).toEqual([
      moved,
      valued,
      gone,
    ]);
    expect(changes.alignment.frame.quarters).toBe(3);
    expect([named('turn'), named('side'), named('package'), named('fitted')]).toEqual([[], [], [], []]);
  });
}

const butterstick = boardFolder('butterstick');
(butterstick ? test : test.skip)(
  'butterstick: its bill of materials alone changes no value, one changed line its own',
  () => {
    const files = filesOf(butterstick as string);
    const ticket = ticketOf('butterstick', files);
    const bill = files.filter(({ name }) => name.endsWith('bom.csv'));
    expect(compareBoards(ticket, sourceOf(bill, ticket))).toMatchObject({
      changed: [],
      gone: [],
      added: [],
      untold: 0,
    });
    const [first] = ticket.parts.filter(({ refdes, fitted }) => refdes.startsWith('C') && fitted);
    const text = `Reference,Value,Fitted\n${first.refdes},330u 6.3V,DNP\nX99,1u,\n`;
    const other = [{ name: 'newer-bom.csv', bytes: new TextEncoder().encode(text) }];
    const changes = compareBoards(ticket, sourceOf(other, ticket));
    expect(changes.changed.map(({ aspects }) => aspects)).toEqual([['value', 'fitted']]);
    expect(changes.unplaced).toEqual(['X99']);
  },
);
