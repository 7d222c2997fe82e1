import { existsSync, lstatSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { nodeFileSystem } from '../../../../main/files/file-system.ts';
import { writeAtomically, writeExclusively } from '../../../../main/files/write-atomically.ts';
import { temporaryFolder } from '../../../support/shell/folders.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const code = (error: string) => Object.assign(new Error(error), { code: error });

test('a rename that a scanner holds up is tried again', async () => {
  const path = join(temporaryFolder(), 'a');
  let tries = 0;
  const fs = {
    ...nodeFileSystem,
    rename: async (from: string, to: string) => {
      tries += 1;
      if (tries < 4) throw code('EBUSY');
      await nodeFileSystem.rename(from, to);
    },
  } as typeof nodeFileSystem;
  await writeAtomically(fs, path, bytes('new'));
  expect(tries).toBe(4);
  expect(readFileSync(path, 'utf8')).toBe('new');
});

test('content and name are made durable, in that order, before the work counts as done', async () => {
  const folder = temporaryFolder();
  const order: string[] = [];
  const fs: typeof nodeFileSystem = {
    ...nodeFileSystem,
    async open(path, flags, mode) {
      const handle = await nodeFileSystem.open(path, flags, mode);
      const sync = handle.sync.bind(handle);
      handle.sync = async () => {
        order.push(String(path) === folder ? 'sync folder' : 'sync content');
        await sync();
      };
      return handle;
    },
    async rename(from, to) {
      order.push('rename');
      await nodeFileSystem.rename(from, to);
    },
  };
  await writeAtomically(fs, join(folder, 'a'), bytes('new'));
  expect(order).toEqual(['sync content', 'rename', 'sync folder']);
});

test('a failed rename leaves the old content and no temporary file', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'a'), 'old');
  const fs = { ...nodeFileSystem, rename: () => Promise.reject(code('EIO')) };
  await expect(writeAtomically(fs, join(folder, 'a'), bytes('new'))).rejects.toThrow('EIO');
  expect(readdirSync(folder)).toEqual(['a']);
  expect(readFileSync(join(folder, 'a'), 'utf8')).toBe('old');
});

test('a link to a ticket stays a link, and the file behind it is replaced', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'real'), 'old');
  symlinkSync(join(folder, 'real'), join(folder, 'link'));
  await writeAtomically(nodeFileSystem, join(folder, 'link'), bytes('new'));
  expect(lstatSync(join(folder, 'link')).isSymbolicLink()).toBe(true);
  expect(readFileSync(join(folder, 'real'), 'utf8')).toBe('new');
});

test('an exclusive write never replaces, also where the disk knows no links', async () => {
  const folder = temporaryFolder();
  const withoutLinks = { ...nodeFileSystem, link: () => Promise.reject(code('ENOTSUP')) };
  for (const [index, fs] of [nodeFileSystem, withoutLinks].entries()) {
    const path = join(folder, `a${index}`);
    await writeExclusively(fs, path, bytes('first'));
    await expect(writeExclusively(fs, path, bytes('second'))).rejects.toMatchObject({ code: 'EEXIST' });
    expect(readFileSync(path, 'utf8')).toBe('first');
  }
  expect(readdirSync(folder)).toEqual(['a0', 'a1']);
  expect(existsSync(join(folder, 'a1'))).toBe(true);
});
