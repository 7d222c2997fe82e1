import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { packTicket, unpackTicket } from '../../../../main/document/ticket-archive.ts';
import { planForTargets } from '../../../../shared-types/rules/new-plan.ts';
import { boardWith, partNamed } from '../../../support/boards.ts';

const board = boardWith([partNamed('U1')]);
const contents = {
  document: { board, plan: planForTargets(board, 'T-1', ['U1']) },
  photos: new Map([
    ['b.jpg', new Uint8Array([1, 2])],
    ['a.jpg', new Uint8Array([3])],
  ]),
};
const codeOf = (bytes: Uint8Array): string => {
  const read = unpackTicket(bytes, 'x.hmticket');
  return read.ok ? 'ok' : read.problem.code;
};

test('a ticket comes back whole, and the same ticket gives the same bytes', () => {
  const bytes = packTicket(contents);
  const read = unpackTicket(bytes, 'x.hmticket');
  expect(read.ok && read.value.document).toEqual(contents.document);
  expect(read.ok && [...read.value.photos.keys()]).toEqual(['a.jpg', 'b.jpg']);
  expect(packTicket(contents)).toEqual(bytes);
});

test('truncated, foreign and incomplete archives are told apart', () => {
  const bytes = packTicket(contents);
  expect(codeOf(bytes.slice(0, bytes.length - 40))).toBe('damaged-ticket');
  expect(codeOf(new Uint8Array([1, 2, 3]))).toBe('damaged-ticket');
  expect(codeOf(zipSync({ 'readme.txt': new Uint8Array(3) }))).toBe('missing-entry');
});

test('an entry that would unpack to more than the limit is refused before unpacking', () => {
  expect(codeOf(zipSync({ 'board.json': new Uint8Array(65 * 1024 * 1024) }))).toBe('too-large');
});

test('paths out of the archive are ignored', () => {
  const bytes = zipSync({ '../board.json': new Uint8Array(3), 'photos/../../x': new Uint8Array(3) });
  expect(codeOf(bytes)).toBe('missing-entry');
});
