import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

type Breakage = { name: string; file: string; find: string; replace: string; test: string };

const folder = 'tests/breakages';
const breakages = readdirSync(folder).flatMap(
  (file) => JSON.parse(readFileSync(join(folder, file), 'utf8')) as Breakage[],
);

test('every breakage still finds its line once, changes it, and names a test that is there', () => {
  expect(breakages.length).toBeGreaterThan(20);
  const lost = breakages.filter(({ file, find, replace, test: path }) => {
    const found = existsSync(file) ? readFileSync(file, 'utf8').split(find).length - 1 : 0;
    return found !== 1 || find === replace || !existsSync(path);
  });
  expect(lost.map(({ name }) => name)).toEqual([]);
});

test('no two breakages have one name', () => {
  const names = breakages.map(({ name }) => name);
  expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
});
