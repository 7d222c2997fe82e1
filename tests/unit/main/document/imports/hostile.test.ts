import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { type GivenFile, importBoard } from '../../../../../main/document/imports/import-board.ts';
import { problemSentence } from '../../../../../shared-types/words/problems.ts';
import { passesOf } from '../../../../support/yardstick.ts';

const text = (name: string, content: string): GivenFile => ({ name, bytes: strToU8(content) });

/** More passes over 20 MB than any of these take by far; what grows with the square of its input would take a million. */
const MOST_PASSES = 1000;

/** One problem in one sentence, in bounded time. */
function problemOf(file: GivenFile) {
  let result: ReturnType<typeof importBoard> | undefined;
  const passes = passesOf(() => {
    result = importBoard([file]);
  });
  expect(passes, file.name).toBeLessThan(MOST_PASSES);
  if (!result || result.ok) throw new Error('expected a problem');
  expect(problemSentence(result.problem)).not.toMatch(/undefined|NaN|null/);
  return result.problem;
}

const MEGABYTES = 20_000_000;
const PIN = '327NET              R1    -1          A01X+001000Y+002000X0500Y0600R000S1\n';
const fill = (piece: string): string => piece.repeat(Math.ceil(MEGABYTES / piece.length));

describe('twenty megabytes of one thing end soon, as one problem', () => {
  test.each([
    ['an element never closed', 'a.xml', `<IPC-2581>${fill('<a>')}`],
    ['one attribute', 'b.xml', `<IPC-2581><CadHeader units="${fill('M')}"/>`],
    ['a text that is no netlist', 'c.ipc', `P  UNITS CUST 0\n${fill('999\n')}`],
    ['netlist records of vias', 'd.ipc', fill(PIN.replace('R1 ', 'VIA'))],
    ['netlist records without figures', 'e.ipc', fill('327NET              R1    -1\n')],
    ['netlist records with a run of blanks', 'f.ipc', `327NET              R1    -1   ${fill(' ')}X\n`],
    ['a bill of one reference', 'g.csv', `Reference,Value\n${fill('R1,')}`],
    ['a bill of ranges', 'h.csv', `Reference,Value\n"${fill('R1-R999,')}",x\n`],
    ['a bill of quotes', 'i.csv', `Reference,Value\n${fill('"')}`],
    ['dashes', 'j.csv', `Reference,Value\n${fill('- ')},x\n`],
  ])(
    '%s',
    (_, name, content) => {
      problemOf(text(name, content));
    },
    60_000,
  );
});

test('more pins than any board has', () => {
  problemOf(text('many.ipc', `P  UNITS CUST 1\n${PIN.repeat(500_001)}999\n`));
}, 60_000);

describe('archives that lie', () => {
  const inner = zipSync({ 'parts.csv': strToU8('Ref,X (mm),Y (mm)\nR1,1,2\n') });

  test('a member that says it is small and is not writes no more than it said', () => {
    const bytes = zipSync({ 'a.csv': new Uint8Array(50_000_000) });
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    const directory = bytes.length - 22 - (46 + 5);
    expect(view.getUint32(directory, true)).toBe(0x02014b50);
    view.setUint32(directory + 24, 100, true);
    problemOf({ name: 'lie.zip', bytes });
  });

  test('archives nested a hundred deep are opened once', () => {
    let bytes: Uint8Array = inner;
    for (let depth = 0; depth < 100; depth++) bytes = zipSync({ 'next.zip': bytes }, { level: 0 });
    expect(problemOf({ name: 'deep.zip', bytes })).toMatchObject({ code: 'unknown-file-kind' });
  });

  test.each(['../up.csv', '/root.csv', 'C:\\disk.csv', 'a/../../b.csv', '..\\win.csv'])(
    'a member named %s is left out',
    (name) => {
      expect(
        problemOf({ name: 'out.zip', bytes: zipSync({ [name]: strToU8('Ref,X (mm),Y (mm)\nR1,1,2\n') }) }).code,
      ).toBe('no-placements');
    },
  );
});

describe('no cut and no exchanged byte makes the import throw', () => {
  const netlist = `P  UNITS CUST 1\n${PIN}${PIN.replace('R1', 'R2').replace('-1 ', '-2 ')}999\n`;
  const bill = 'Qty,Reference,Value,DNP\n2,"C1, C2",100n,\n1,R1-R4,10k,x\n';
  const xml = `<IPC-2581 revision="B"><Ecad><CadHeader units="MILLIMETER"/><CadData><Step name="s"><Package name="p" pinOne="1"><Pin number="1"><Location x="0" y="1"/></Pin></Package><Component refDes="R1" packageRef="p" layerRef="TOP"><Xform rotation="90"/><Location x="1" y="2"/></Component></Step></CadData></Ecad></IPC-2581>`;
  const zipped = zipSync({ 'pos.csv': strToU8('Ref,X (mm),Y (mm)\nR1,1,2\n'), 'bom.csv': strToU8(bill) });
  const files: GivenFile[] = [
    text('n.ipc', netlist),
    text('b.csv', bill),
    text('x.xml', xml),
    { name: 'z.zip', bytes: zipped },
  ];

  test('the files themselves are read, to be sure', () => {
    expect(importBoard([files[2]]).ok).toBe(true);
    expect(importBoard([files[3]]).ok).toBe(true);
    expect(importBoard([files[3], files[0], files[1]]).ok).toBe(true);
  });

  test('cut short', () => {
    for (const file of files) {
      for (let length = 0; length < file.bytes.length; length++) {
        importBoard([{ ...file, bytes: file.bytes.slice(0, length) }]);
      }
    }
  });

  test('bytes exchanged', () => {
    const edits = fc.array(fc.tuple(fc.nat(2000), fc.nat(255)), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.constantFrom(...files), edits, (file, changes) => {
        const bytes = file.bytes.slice();
        for (const [at, byte] of changes) bytes[at % bytes.length] = byte;
        importBoard([{ ...file, bytes }]);
      }),
      { numRuns: 1500, seed: 11 },
    );
  });
});
