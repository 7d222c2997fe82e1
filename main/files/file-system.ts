import * as promises from 'node:fs/promises';

/** What the files room asks of the disk: injected, so that a test can fill it up. */
export type FileSystem = Pick<
  typeof promises,
  'open' | 'readFile' | 'rename' | 'link' | 'unlink' | 'mkdir' | 'readdir' | 'stat' | 'realpath' | 'utimes' | 'truncate'
>;

export const nodeFileSystem: FileSystem = promises;
