import { mkdirSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../../../support/shell/folders.ts';

type Start = {
  reasonToBuild(folder: string): string | null;
  electronBinary(folder: string): string | null;
  chooseDoor(surroundings: { binary: string | null; isRoot: boolean; hasDisplay: boolean; words: string[] }): {
    door: 'electron' | 'local';
    line: string;
  };
};
const { reasonToBuild, electronBinary, chooseDoor } = (await import(
  pathToFileURL(join(import.meta.dirname, '../../../../start.mjs')).href
)) as Start;

const put = (folder: string, file: string, second: number, content = '') => {
  mkdirSync(dirname(join(folder, file)), { recursive: true });
  writeFileSync(join(folder, file), content);
  utimesSync(join(folder, file), second, second);
};
const sources = ['main/a.ts', 'renderer/b/c.tsx', 'shared-types/d.ts', 'vite.config.ts', 'package.json'];
const built = [
  'dist/main/local-app.js',
  'dist/main/electron-app.js',
  'dist/main/evaluation.worker.js',
  'dist/main/sheet.worker.js',
  'dist/preload/preload.cjs',
  'dist/renderer/index.html',
];

test('what is missing or older than its source is built', () => {
  const folder = temporaryFolder();
  for (const file of sources) put(folder, file, 1000);
  expect(reasonToBuild(folder)).toMatch(/not built/);
  for (const file of built) put(folder, file, 2000);
  expect(reasonToBuild(folder)).toBeNull();
  put(folder, 'renderer/b/c.tsx', 3000);
  expect(reasonToBuild(folder)).toMatch(/newer/);
});

test('the binary of Electron counts only when it is really there', () => {
  const folder = temporaryFolder();
  expect(electronBinary(folder)).toBeNull();
  put(folder, 'node_modules/electron/path.txt', 1, 'electron');
  expect(electronBinary(folder)).toBeNull();
  put(folder, 'node_modules/electron/dist/electron', 1);
  expect(electronBinary(folder)).toBe(join(folder, 'node_modules/electron/dist/electron'));
});

test('Electron where it can run, else the local door; one line says which and why', () => {
  const fine = { binary: '/e', isRoot: false, hasDisplay: true, words: [] };
  expect(chooseDoor(fine).door).toBe('electron');
  const others = [{ binary: null }, { isRoot: true }, { hasDisplay: false }, { words: ['--no-window'] }];
  const choices = others.map((other) => chooseDoor({ ...fine, ...other }));
  expect(choices.map(({ door }) => door)).toEqual(['local', 'local', 'local', 'local']);
  expect(new Set(choices.map(({ line }) => line)).size).toBe(4);
  for (const { line } of choices) expect(line).not.toContain('\n');
});
