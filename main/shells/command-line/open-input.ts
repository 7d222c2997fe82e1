import type { Board } from '../../../shared-types/board.ts';
import { BOARD_FORMAT, PLAN_FORMAT } from '../../../shared-types/format-version.ts';
import type { Plan, TicketDocument } from '../../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import { readBoard, readPlan } from '../../document/open-document.ts';
import { looksLikeZip, type TicketContents } from '../../document/ticket-archive.ts';
import { readTicketFile } from '../../files/ticket-file.ts';
import { readBytes, readText } from './read-input.ts';

export type Input =
  | { kind: 'ticket'; document: TicketDocument; photos: ReadonlyMap<string, Uint8Array> }
  | { kind: 'board'; board: Board }
  | { kind: 'plan'; plan: Plan };

/** A ticket, board or plan file, told apart by what it holds. Errors: those of reading and of the formats. */
export function openInput(path: string): Result<Input> {
  const read = readBytes(path);
  if (!read.ok) return read;
  if (looksLikeZip(read.value.bytes)) {
    const ticket = readTicketFile(read.value.bytes, path);
    return ticket.ok ? succeed({ kind: 'ticket', ...ticket.value }) : ticket;
  }
  if (path.endsWith('.hmticket')) return fail('damaged-ticket', { file: path });
  const text = readText(path);
  if (!text.ok) return text;
  return openText(text.value, path);
}

function openText(text: string, path: string): Result<Input> {
  const isPlan = text.includes(`"${PLAN_FORMAT}"`) && !text.includes(`"${BOARD_FORMAT}"`);
  if (isPlan) {
    const plan = readPlan(text, path);
    return plan.ok ? succeed({ kind: 'plan', plan: plan.value }) : plan;
  }
  const board = readBoard(text, path);
  return board.ok ? succeed({ kind: 'board', board: board.value }) : board;
}

/** The document of a ticket file; a bare board or plan is told what is missing. */
export function openTicket(path: string): Result<TicketDocument> {
  const opened = openWholeTicket(path);
  return opened.ok ? succeed(opened.value.document) : opened;
}

/** The same with its photos. */
export function openWholeTicket(path: string): Result<TicketContents> {
  const input = openInput(path);
  if (!input.ok) return input;
  if (input.value.kind === 'board') return fail('no-plan', { file: path });
  if (input.value.kind === 'plan')
    return fail('wrong-format', { file: path, detail: { expected: 'ticket', found: 'a bare plan' } });
  return succeed(input.value);
}
