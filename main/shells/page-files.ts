import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};

export type PageFile = { bytes: Uint8Array<ArrayBuffer>; type: string };
/** File of the built window for a path such as '/assets/x.js'; null: there is none. '/' is index.html. */
export type PageFiles = (urlPath: string) => Promise<PageFile | null>;

/**
 * The built window's files. Only names found by listing the folder are served: a path is looked up, never joined, so no
 * '..' and no link leads out. The folder is listed again when a name is new, for a window that was built meanwhile.
 */
export function createPageFiles(folder: string): PageFiles {
  let names: ReadonlySet<string> | null = null;
  return async (urlPath) => {
    const name = urlPath === '/' ? '/index.html' : urlPath;
    if (!names?.has(name)) names = await listed(folder);
    const type = TYPES[extname(name)];
    if (!names.has(name) || !type) return null;
    const bytes = await readFile(join(folder, ...name.split('/'))).catch(() => null);
    return bytes && { bytes: new Uint8Array(bytes), type };
  };
}

async function listed(folder: string, below = ''): Promise<ReadonlySet<string>> {
  const names = new Set<string>();
  const entries = await readdir(join(folder, below), { withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    const path = `${below}/${entry.name}`;
    if (entry.isFile()) names.add(path);
    if (entry.isDirectory()) for (const name of await listed(folder, path)) names.add(name);
  }
  return names;
}
