/** As many files as an import takes. */
const MOST = 500;
const DEEPEST = 6;

/** What of a drop's entries is needed here; the browser's own types fit it. */
type Entry = { isFile: boolean; isDirectory: boolean };
type FileEntry = Entry & { file(take: (file: File) => void, fail: (error: unknown) => void): void };
type FolderEntry = Entry & {
  createReader(): { readEntries(take: (entries: Entry[]) => void, fail: (error: unknown) => void): void };
};

/** The files of a drop; of folders the files in them, hidden ones left out. The drop must be asked before it is over: call it at once. */
export async function droppedFiles(data: DataTransfer | null): Promise<File[]> {
  if (!data) return [];
  const entries = [...data.items].map((item) => item.webkitGetAsEntry() as Entry | null);
  if (!entries.some((entry) => entry?.isDirectory)) return [...data.files];
  const files: File[] = [];
  for (const entry of entries) if (entry) await gather(entry, files, 0);
  return files;
}

async function gather(entry: Entry, files: File[], depth: number): Promise<void> {
  if (files.length >= MOST || depth > DEEPEST) return;
  if (entry.isFile) {
    const file = await fileOf(entry as FileEntry);
    if (file && !file.name.startsWith('.')) files.push(file);
    return;
  }
  for (const inner of await entriesOf(entry as FolderEntry)) await gather(inner, files, depth + 1);
}

const fileOf = (entry: FileEntry): Promise<File | null> =>
  new Promise((resolve) => entry.file(resolve, () => resolve(null)));

/** A reader gives a folder in pieces; an empty piece is the end. */
async function entriesOf(folder: FolderEntry): Promise<Entry[]> {
  const reader = folder.createReader();
  const all: Entry[] = [];
  for (;;) {
    const piece = await new Promise<Entry[]>((resolve) => reader.readEntries(resolve, () => resolve([])));
    if (piece.length === 0) return all;
    all.push(...piece);
  }
}
