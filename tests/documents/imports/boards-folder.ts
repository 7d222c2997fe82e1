import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { GivenFile } from '../../../main/document/imports/import-board.ts';

/** Outside boards, kept beside the project: open-hardware data that none of us wrote. */
const FOLDER = join(dirname(fileURLToPath(import.meta.url)), '../../../../shared/boards');

/** The folder of one board, or null with a printed reason. */
export function boardFolder(name: string): string | null {
  const folder = join(FOLDER, name);
  if (existsSync(folder)) return folder;
  console.log(`skipped: ../shared/boards/${name} is not here`);
  return null;
}

/** The files of a folder that an import may be given; pictures are left out. */
export function filesOf(folder: string, only: RegExp = /./): GivenFile[] {
  return readdirSync(folder)
    .filter((name) => only.test(name) && !/\.(png|jpe?g)$/i.test(name) && statSync(join(folder, name)).isFile())
    .sort()
    .map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(folder, name))) }));
}

export function textOf(folder: string, name: string): string {
  return readFileSync(join(folder, name), 'latin1');
}
