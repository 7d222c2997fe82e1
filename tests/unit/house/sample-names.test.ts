import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const rooms = ['main', 'renderer', 'shared-types'];
const codeFiles = (folder: string): string[] =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return codeFiles(path);
    return /\.(ts|tsx|html|css)$/.test(name) ? [path] : [];
  });

/** Names that no code path may know: the samples, their tickets, outside boards and cases. */
function forbiddenNames(): string[] {
  const samples = readdirSync('sample-boards').flatMap((name) => /^(.+)\.(board|plan)\.json$/.exec(name)?.[1] ?? []);
  const tickets = readdirSync('sample-boards').flatMap((name) => {
    if (!name.endsWith('.plan.json')) return [];
    return (JSON.parse(readFileSync(join('sample-boards', name), 'utf8')) as { ticket: { number: string } }).ticket
      .number;
  });
  const cases = readdirSync('tests/reference/cases').flatMap((name) => /^(.+)\.json$/.exec(name)?.[1] ?? []);
  const outside = [
    'thunderscope',
    'ulx3s',
    'butterstick',
    'limesdr',
    'kvision',
    'heat-example',
    'fomu',
    'protel',
    'pixhawk',
    'testcase9',
    'testcase10',
    'DM0002',
  ];
  const issueNames = ['signal-card', 'ferry-gate', 'weighbridge', 'greenhouse', 'tide-gauge'];
  return [...new Set([...samples, ...tickets, ...cases, ...outside, ...issueNames])].map((name) => name.toLowerCase());
}

test('no code path knows the name of a sample, a ticket or a case', () => {
  const names = forbiddenNames();
  expect(names.length).toBeGreaterThan(12);
  const files = rooms.flatMap(codeFiles);
  expect(files.length).toBeGreaterThan(100);
  const found = files.flatMap((file) => {
    const text = readFileSync(file, 'utf8').toLowerCase();
    return names.filter((name) => text.includes(name)).map((name) => `${file}: ${name}`);
  });
  expect(found).toEqual([]);
});

test('files stay under 400 lines', () => {
  const long = rooms.flatMap(codeFiles).filter((file) => readFileSync(file, 'utf8').split('\n').length > 400);
  expect(long).toEqual([]);
});
