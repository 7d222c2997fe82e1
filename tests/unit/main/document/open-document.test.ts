import { describe, expect, test } from 'vitest';
import { migrate } from '../../../../main/document/migrations/migrate.ts';
import { readBoard, readPlan, writeBoard, writePlan } from '../../../../main/document/open-document.ts';
import { emptyBoard } from '../../../../shared-types/board.ts';
import { planForTargets } from '../../../../shared-types/rules/new-plan.ts';
import { problemSentence } from '../../../../shared-types/words/problems.ts';
import { boardWith, partNamed } from '../../../support/boards.ts';

const board = boardWith([partNamed('U1'), partNamed('C1', { x: 30, side: 'bottom' })]);
const changed = (edit: (copy: Record<string, unknown> & typeof board) => void): string => {
  const copy = structuredClone(board) as Record<string, unknown> & typeof board;
  edit(copy);
  return JSON.stringify(copy);
};
const sentenceOf = (text: string): string => {
  const read = readBoard(text, 'a.board.json');
  return read.ok ? 'ok' : problemSentence(read.problem);
};

describe('a board', () => {
  test('comes back as it was written', () => {
    const read = readBoard(writeBoard(board), 'a.board.json');
    expect(read).toEqual({ ok: true, value: board });
  });

  test('with a wrong field names path and part', () => {
    const text = changed((copy) => {
      copy.parts[1].package.lengthMm = -1;
    });
    expect(sentenceOf(text)).toMatch(/^a\.board\.json, parts\[1\]\.package\.lengthMm of C1: .+/);
  });

  test.each([
    ['', /is not valid JSON \(the file is empty\)/],
    ['%PDF-1.7', /line 1, column 1/],
    ['{"format":"heatmargin-board",\n"version":1,\n"name":}', /line 3/],
    ['[]', /is not a heatmargin-board/],
    [`${'['.repeat(200)}${']'.repeat(200)}`, /nested deeper/],
    [changed((copy) => Object.assign(copy, { version: 99 })), /newer Heatmargin \(version 99/],
    [changed((copy) => Object.assign(copy, { format: 'other' })), /not a heatmargin-board but other/],
    [changed((copy) => Object.assign(copy, { colour: 'red' })), /a field that the format does not know: colour/],
    [changed((copy) => Object.assign(copy, { name: undefined })), /name: is missing/],
    [changed((copy) => Object.assign(copy, { name: 7 })), /name: must be a text/],
    [changed((copy) => Object.assign(copy.laminate, { thicknessMm: 900 })), /laminate.thicknessMm: must be 20 or less/],
    [changed((copy) => Object.assign(copy.parts[0], { side: 'left' })), /side of U1: must be one of 'top', 'bottom'/],
    [changed((copy) => copy.parts.push(partNamed('U1', { x: 60 }))), /designator that another part has/],
    [changed((copy) => Object.assign(copy, { outline: copy.outline.slice(0, 2) })), /encloses no area/],
    [
      changed((copy) => Object.assign(copy, { outline: [0, 2, 1, 3].map((i) => copy.outline[i]) })),
      /crosses itself near x/,
    ],
  ])('refuses %.30s', (text, sentence) => {
    expect(sentenceOf(text)).toMatch(sentence);
  });

  test('keeps a byte order mark from hurting', () => {
    expect(readBoard(`\uFEFF${writeBoard(board)}`, 'a').ok).toBe(true);
  });
});

describe('a plan', () => {
  test('comes back as it was written', () => {
    const plan = planForTargets(board, 'T-1', ['U1']);
    expect(readPlan(writePlan(plan), 'plan.json')).toEqual({ ok: true, value: plan });
  });

  test('may not name a site it does not have', () => {
    const plan = planForTargets(board, 'T-1', ['U1']);
    const read = readPlan(JSON.stringify({ ...plan, sites: [] }), 'plan.json');
    expect(read.ok ? '' : problemSentence(read.problem)).toMatch(/names the site site-1, which the plan does not have/);
  });

  test('may not use an id twice', () => {
    const plan = planForTargets(board, 'T-1', ['U1']);
    const read = readPlan(JSON.stringify({ ...plan, tags: [...plan.tags, ...plan.tags] }), 'plan.json');
    expect(read.ok ? '' : problemSentence(read.problem)).toMatch(/tags\[1\] of tag-1.+used twice/);
  });
});

describe('migrations', () => {
  const format = {
    name: 'probe',
    version: 3,
    migrations: [
      { from: 1, migrate: (document: Record<string, unknown>) => ({ ...document, second: 2 }) },
      { from: 2, migrate: (document: Record<string, unknown>) => ({ ...document, third: document.second }) },
    ],
  };

  test('run in order up to the current version', () => {
    expect(migrate({ format: 'probe', version: 1 }, format, 'p')).toEqual({
      ok: true,
      value: { format: 'probe', version: 3, second: 2, third: 2 },
    });
  });

  test('a missing step is told', () => {
    const read = migrate({ format: 'probe', version: 1 }, { ...format, migrations: [] }, 'p');
    expect(read.ok ? '' : read.problem.code).toBe('migration-failed');
  });

  test('an empty board is a valid one', () => {
    expect(readBoard(writeBoard(emptyBoard('New', 60, 40)), 'x').ok).toBe(true);
  });
});
