import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { packTicket } from '../../../../main/document/ticket-archive.ts';
import { readTicketFile } from '../../../../main/files/ticket-file.ts';
import { readZipDirectory } from '../../../../main/files/zip-directory.ts';
import { bareTicket } from '../../../support/shell/small-ticket.ts';

const photo = new Uint8Array([9, 8, 7]);
const packed = () => packTicket({ document: bareTicket(), photos: new Map([['ab12', photo]]) });
const problemOf = (bytes: Uint8Array) => {
  const read = readTicketFile(bytes, 'T-1.hmticket');
  return read.ok ? null : read.problem;
};
const json = (name: string) => readZipDirectory(packed())!.find((entry) => entry.name === name)!;

test('a ticket reads back whole, photos included', () => {
  const read = readTicketFile(packed(), 'T-1.hmticket');
  expect(read.ok && read.value.document).toEqual(bareTicket());
  expect(read.ok && read.value.photos).toEqual(new Map([['ab12', photo]]));
});

test('one changed byte of any content is noticed, and named', () => {
  for (const entry of readZipDirectory(packed())!) {
    const damaged = packed();
    damaged[entry.start + Math.floor(entry.packedSize / 2)] ^= 0x04;
    expect(problemOf(damaged)).toMatchObject({ code: 'damaged-ticket', file: 'T-1.hmticket', where: entry.name });
  }
});

test('a ticket cut off anywhere is damaged, never half read', () => {
  const whole = packed();
  for (let length = 0; length < whole.length; length += 97) {
    expect(problemOf(whole.subarray(0, length))?.code).toBe('damaged-ticket');
  }
});

test.each(['../outside.json', '/etc/cron.d/x', 'photos/../../x', 'photos\\..\\x', 'C:\\x', 'photos/a/b', 'run.sh'])(
  'an archive with the entry %s is refused',
  (name) => {
    const bytes = zipSync({ 'board.json': strToU8('{}'), 'plan.json': strToU8('{}'), [name]: strToU8('x') });
    expect(problemOf(bytes)).toMatchObject({ code: 'damaged-ticket', where: name });
  },
);

test('an archive with one entry twice is refused', () => {
  const bytes = zipSync({ 'board.json': strToU8('{}'), 'board.jsoX': strToU8('{}') }, { level: 0 });
  const text = Buffer.from(bytes).toString('latin1').replaceAll('board.jsoX', 'board.json');
  expect(problemOf(new Uint8Array(Buffer.from(text, 'latin1')))).toMatchObject({ code: 'damaged-ticket' });
});

test('a bomb is refused by the size that it admits', () => {
  const bytes = zipSync({ 'board.json': new Uint8Array(80 * 1024 * 1024), 'plan.json': strToU8('{}') });
  expect(bytes.byteLength).toBeLessThan(200_000);
  expect(problemOf(bytes)).toMatchObject({ code: 'too-large' });
});

test('a bomb that lies about its size stops at its own lie', () => {
  const bytes = zipSync({ 'board.json': new Uint8Array(20 * 1024 * 1024), 'plan.json': strToU8('{}') });
  const text = Buffer.from(bytes);
  const view = new DataView(bytes.buffer);
  // The directory's size field of the first entry, 24 bytes into it: say 100 bytes.
  const at = text.indexOf(Buffer.from([0x50, 0x4b, 1, 2]));
  view.setUint32(at + 24, 100, true);
  const before = process.memoryUsage().arrayBuffers;
  expect(problemOf(bytes)).toMatchObject({ code: 'damaged-ticket', where: 'board.json' });
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(10 * 1024 * 1024);
});

test('an encrypted entry and another method are refused', () => {
  const at = Buffer.from(packed()).indexOf(Buffer.from([0x50, 0x4b, 1, 2]));
  const encrypted = packed();
  encrypted[at + 8] |= 1;
  expect(problemOf(encrypted)?.code).toBe('damaged-ticket');
  const other = packed();
  other[at + 10] = 12;
  expect(problemOf(other)?.code).toBe('damaged-ticket');
});

test('what is no archive at all is a damaged ticket', () => {
  expect(problemOf(new Uint8Array())?.code).toBe('damaged-ticket');
  expect(problemOf(strToU8('{"format":"heatmargin-board"}'))?.code).toBe('damaged-ticket');
  expect(json('board.json').size).toBeGreaterThan(100);
});
