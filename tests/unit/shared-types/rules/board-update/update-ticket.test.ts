import { describe, expect, it } from 'vitest';
import type { Board, Cover, Part } from '../../../../../shared-types/board.ts';
import { USUAL_COVERS } from '../../../../../shared-types/library/usual-covers.ts';
import type { TicketDocument } from '../../../../../shared-types/plan.ts';
import { alignAs, alignBoards } from '../../../../../shared-types/rules/board-update/align.ts';
import { compareBoards } from '../../../../../shared-types/rules/board-update/compare.ts';
import { usualDecisions } from '../../../../../shared-types/rules/board-update/decide.ts';
import { mentionsIn } from '../../../../../shared-types/rules/board-update/mentions.ts';
import { updateTicket } from '../../../../../shared-types/rules/board-update/update-ticket.ts';
import { planForTargets } from '../../../../../shared-types/rules/new-plan.ts';
import { renameEverywhere } from '../../../../../shared-types/rules/rename-part.ts';
import { boardUpdateWords } from '../../../../../shared-types/words/board-update.ts';
import { updateLines } from '../../../../../shared-types/words/update-lines.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';
import { tellingAll } from './random-edits.ts';

const chip = { name: 'chip', shape: 'rectangle', lengthMm: 2, widthMm: 1, heightMm: 1 } as const;
const chips = (names: string): Part[] =>
  names
    .split(' ')
    .map((refdes, index) => partNamed(refdes, { x: 10 + 7 * index, y: 10 + 3 * (index % 4), package: chip }));

/** A ticket with a site on U1, tags on R1 and R2, a thermocouple on U1, a strap on R3 and a match point taken from R4. */
function ticketDocument(): TicketDocument {
  const board = boardWith([partNamed('U1', { coated: true, massG: 3 }), ...chips('R1 R2 R3 R4 R5')]);
  const plan = planForTargets(board, 'T-9', ['U1']);
  const tag = { order: null, note: 'lift with care' };
  plan.tags.push(
    { ...tag, id: 'tag-r1', kind: 'remove', refdes: 'R1', goesBack: true, traySlot: 'A1' },
    { ...tag, id: 'tag-r2', kind: 'shield', refdes: 'R2', shield: 'tape-polyimide' },
    { ...tag, id: 'tag-w', kind: 'watchPoint', name: 'W1', side: 'top', x: 53, y: 41, refdes: 'U1' },
  );
  board.straps.push({
    ...{ kind: 'jumpers', id: 'g', name: 'BOOT', describes: [], note: '' },
    positions: [{ refdes: 'R3', value: '0R', tolerancePercent: null, meaning: '' }],
    settings: [],
  } as unknown as Board['straps'][number]);
  return { board, plan };
}

/** A can of 20 x 10 mm, not turned. */
const coverAt = (x: number, y: number): Cover => ({
  ...{ id: 'SH1', kind: 'can', side: 'top', x, y, lengthMm: 20, widthMm: 10, turn: 0 },
  ...USUAL_COVERS.can,
});

const sourceOf = (board: Board) => ({ board, told: tellingAll(board) });
const without = (board: Board, ...names: string[]): Board => ({
  ...board,
  parts: board.parts.filter(({ refdes }) => !names.includes(refdes)),
});
const changePart = (board: Board, refdes: string, fields: Partial<Part>): Board => ({
  ...board,
  parts: board.parts.map((part) => (part.refdes === refdes ? { ...part, ...fields } : part)),
});

describe('an update of a ticket', () => {
  it('keeps all that is said of a part that stays; rework area and thermocouple go with the part', () => {
    const ticket = ticketDocument();
    const files = changePart(ticket.board, 'U1', { x: 52, y: 40, coated: false, massG: undefined, alloy: 'unknown' });
    const next = updateTicket(ticket, compareBoards(ticket.board, sourceOf(files)), usualDecisions);
    const part = next.board.parts[0];
    expect(part).toEqual({ ...ticket.board.parts[0], x: 52 });
    expect(next.plan.sites[0].area).toEqual({ ...ticket.plan.sites[0].area, x: 52 });
    expect(next.plan.tags.find(({ id }) => id === 'tag-w')).toMatchObject({ x: 55, y: 41, refdes: 'U1' });
    expect(next.plan.tags.filter(({ id }) => id !== 'tag-w')).toEqual(
      ticket.plan.tags.filter(({ id }) => id !== 'tag-w'),
    );
    expect(next.board.straps).toEqual(ticket.board.straps);
  });

  it('takes a part that is gone off the board, and nothing of what names it', () => {
    const ticket = ticketDocument();
    const files = without(ticket.board, 'R1', 'R3', 'R5');
    const changes = compareBoards(ticket.board, sourceOf(files));
    expect(changes.gone.map(({ refdes }) => refdes)).toEqual(['R1', 'R3', 'R5']);
    expect([...mentionsIn(ticket)].map(([refdes, said]) => [refdes, said.map(({ kind }) => kind)])).toEqual([
      ['U1', ['site', 'watch']],
      ['R1', ['tag']],
      ['R2', ['tag']],
      ['R3', ['strap']],
    ]);
    const next = updateTicket(ticket, changes, { ...usualDecisions, stay: ['R5'] });
    expect(next.board.parts.map(({ refdes }) => refdes)).toEqual(['U1', 'R2', 'R4', 'R5']);
    expect(next.plan).toEqual(ticket.plan);
    expect(next.board.straps).toEqual(ticket.board.straps);
  });

  it('says when a new part lies where one is gone, and takes it for the same only when told', () => {
    const ticket = ticketDocument();
    const files = changePart(ticket.board, 'R1', { refdes: 'R101' });
    const changes = compareBoards(ticket.board, sourceOf(files));
    expect([...changes.renamed]).toEqual([['R1', 'R101']]);
    expect(changes.added.map(({ refdes }) => refdes)).toEqual(['R101']);
    const told = renameEverywhere(ticket, 'R1', 'R101');
    const after = compareBoards(told.board, sourceOf(files));
    expect([after.gone, after.added]).toEqual([[], []]);
    expect(told.plan.tags.find(({ id }) => id === 'tag-r1')?.refdes).toBe('R101');
  });

  it('leaves a height, a mark of pin 1 and a package measured by hand unless they are ticked', () => {
    const ticket = ticketDocument();
    const board = {
      ...changePart(ticket.board, 'R2', { pin1: { x: -0.8, y: 0 } }),
      packages: [{ ...chip, class: 'chip-resistor' }],
    };
    const wide = { ...chip, name: 'other', lengthMm: 3, heightMm: 2 };
    const files = changePart(board, 'R2', { package: wide, pin1: { x: 0.8, y: 0 } });
    const changes = compareBoards(board, sourceOf(files));
    expect(changes.changed[0].aspects).toEqual(['size', 'package', 'height', 'pins']);
    expect(updateTicket({ ...ticket, board }, changes, usualDecisions).board.parts).toEqual(board.parts);
    const ticks = { 'size R2': true, 'package R2': true, 'height R2': true, 'pins R2': true };
    const next = updateTicket({ ...ticket, board }, changes, { ...usualDecisions, ticks });
    expect(next.board.parts.find(({ refdes }) => refdes === 'R2')).toMatchObject({
      package: wide,
      pin1: { x: 0.8, y: 0 },
    });
  });

  it('takes nothing of what the files do not tell: a side, an outline, heights, sizes', () => {
    const ticket = boardWith([
      ...chips('R1 R2 R3'),
      ...chips('C1 C2').map((part) => ({ ...part, side: 'bottom' as const })),
    ]);
    const files = {
      ...boardWith(chips('R1 R2 R3').map((part) => ({ ...part, package: { ...chip, lengthMm: 1, heightMm: 9 } }))),
      outline: boardWith([]).outline.map(({ x, y }) => ({ x: x / 2, y })),
    };
    const told = {
      ...tellingAll(files),
      sides: ['top' as const],
      outline: false,
      heights: [],
      sizeless: ['R1', 'R2', 'R3'],
    };
    const changes = compareBoards(ticket, { board: files, told });
    expect(changes).toMatchObject({ common: 3, same: 3, changed: [], gone: [], untold: 2, outline: null });
    expect(compareBoards(ticket, { board: files, told: tellingAll(files) })).toMatchObject({ same: 0, untold: 0 });
  });

  it('matches a designator that stands for several parts by its place, and asks where none lies there', () => {
    const ticket = boardWith(chips('R1 R2 R3 R4 R5'));
    const copies = ticket.parts.map((part) => ({ ...part, refdes: `${part.refdes}(2)`, y: part.y + 40 }));
    const doubles = ticket.parts.map(({ refdes }) => ({ refdes, all: [refdes, `${refdes}(2)`] }));
    const moved = changePart(boardWith([...ticket.parts, ...copies]), 'R3', { x: 90 });
    const source = { board: moved, told: { ...tellingAll(moved), doubles } };
    const still = alignAs(ticket, source, { mirror: false, quarters: 0 }, { x: 0, y: 0 });
    const changes = compareBoards(ticket, source, still);
    expect(
      changes.questions.map(({ part, candidates }) => [part.refdes, candidates.map(({ refdes }) => refdes)]),
    ).toEqual([['R3', ['R3', 'R3(2)']]]);
    expect(changes.added.map(({ refdes }) => refdes)).toEqual(['R1(2)', 'R2(2)', 'R4(2)', 'R5(2)']);
    const answered = compareBoards(ticket, source, still, { R3: 'R3' });
    expect(answered.questions).toEqual([]);
    expect(answered.changed.map(({ refdes, aspects }) => [refdes, aspects])).toEqual([['R3', ['place']]]);
  });

  it('finds the offset to a board drawn by hand, whose parts lie up to half a millimetre off', () => {
    const ticket = boardWith(chips('R1 R2 R3 R4 R5 R6 R7 R8'));
    const off = [0.3, -0.2, 0.4, 0, -0.4, 0.1, 0.2, -0.3];
    const files = {
      ...ticket,
      parts: ticket.parts.map((part, index) => ({ ...part, x: part.x + 31 + off[index], y: part.y - 8 })),
    };
    const { frame, by, votes } = alignBoards(ticket, sourceOf(files));
    expect(by).toBe('references');
    expect(votes).toBeGreaterThan(4);
    expect(Math.abs(frame.by.x + 31)).toBeLessThan(0.25);
    expect(frame.by.y).toBeCloseTo(8, 6);
  });

  it('knows a body described along its other side, and a part given by its pin 1', () => {
    const ticket = boardWith([
      ...chips('R1 R2 R3 R4'),
      partNamed('J1', {
        x: 70,
        y: 60,
        pin1: { x: -4, y: 2 },
        pinCount: 8,
        package: { ...chip, lengthMm: 10, widthMm: 6 },
      }),
    ]);
    const lying = { ...chip, lengthMm: 1, widthMm: 2 };
    const files = changePart(changePart(ticket, 'R2', { package: lying, turn: 90 }), 'J1', {
      ...{ x: 66, y: 62, pin1: undefined, pinCount: undefined },
    });
    expect(compareBoards(ticket, sourceOf(files))).toMatchObject({ changed: [], same: 5, atPin1: ['J1'] });
  });

  it('puts a cover in place of the part of its name, and says what named the part', () => {
    const ticket = ticketDocument();
    const cover: Cover = { ...coverAt(30, 30), id: 'R1' };
    const changes = compareBoards(ticket.board, sourceOf({ ...without(ticket.board, 'R1'), covers: [cover] }));
    expect(changes).toMatchObject({ gone: [], covers: [{ kind: 'part' }] });
    const lines = updateLines(ticket, changes, usualDecisions).join('\n');
    expect(lines).toMatch(/cover +R1: can of 20 mm × 10 mm in place of the part.*kept \(tag remove: lift with care\)/);
    const next = updateTicket(ticket, changes, usualDecisions);
    expect([next.board.covers, next.board.parts.map(({ refdes }) => refdes)]).toEqual([
      [cover],
      ['U1', 'R2', 'R3', 'R4', 'R5'],
    ]);
    const left = updateTicket(ticket, changes, { ...usualDecisions, ticks: { 'cover R1': false } });
    expect([left.board.covers, left.board.parts]).toEqual([[], ticket.board.parts]);
  });

  it('knows a cover by where it lies, however its sides are named, and keeps what the technician measured', () => {
    const mine = { ...coverAt(30, 30), heightMm: 4.5 };
    const ticket = { ...ticketDocument().board, covers: [mine] };
    const changesTo = (fields: Partial<Cover>) =>
      compareBoards(ticket, sourceOf({ ...ticket, covers: [{ ...coverAt(30, 30), ...fields }] })).covers;
    expect(changesTo({ lengthMm: 10, widthMm: 20, turn: 270 })).toEqual([]);
    expect(changesTo({ turn: 180, x: 30.03 })).toEqual([]);
    for (const fields of [{ turn: 90 }, { turn: 5 }, { x: 31 }, { side: 'bottom' as const }]) {
      expect(changesTo(fields)).toMatchObject([{ kind: 'moved', cover: { ...fields, heightMm: 4.5 } }]);
    }
    // Files with the shield among their parts say nothing of the cover.
    const listed = { ...ticket, covers: [], parts: [...ticket.parts, partNamed('SH1')] };
    expect(compareBoards(ticket, sourceOf(listed))).toMatchObject({ covers: [], added: [], gone: [] });
  });

  it('finds no place for files of another board that share designators only, and wonders', () => {
    const names = 'R1 R2 R3 R4 R5 R6 R7 R8 R9 R10 R11 R12';
    const ticket = boardWith(chips(names));
    const files = boardWith(
      chips(names).map((part, index) => ({ ...part, x: (part.x * 7.3 + index * index) % 90, y: (index * 17.7) % 70 })),
    );
    const alignment = alignBoards(ticket, sourceOf(files));
    expect(alignment.by).toBe('corner');
    const changesTo = (board: Board) => compareBoards(ticket, sourceOf(board));
    expect(boardUpdateWords.strange(changesTo(files))).toMatch(/Hardly a part/);
    expect(boardUpdateWords.strange(changesTo(ticket))).toBeNull();
    const others = boardWith(chips(names.replaceAll('R', 'Q')));
    expect(boardUpdateWords.strange(changesTo(others))).toMatch(/No part of these files/);
    // An outline alone places nothing, and a board without parts knows nothing.
    expect(boardUpdateWords.strange(changesTo(boardWith([])))).toBeNull();
    expect(boardUpdateWords.strange(compareBoards(boardWith([]), sourceOf(ticket)))).toBeNull();
  });
});
