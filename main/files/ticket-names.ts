import { TICKET_EXTENSION } from '../../shared-types/format-version.ts';

const LONGEST = 120;
/** Names that Windows keeps for devices: a shelf may lie on a share that Windows reads. */
const DEVICE_NAMES = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])(\..*)?$/i;

/** A text as the stem of a file name that every system takes. */
export function fileStem(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what has to go
  const plain = text.normalize('NFC').replace(/[<>:"/\\|?*\u0000-\u001f\u007f]/g, '-');
  const stem = plain.slice(0, LONGEST).replace(/^[\s.]+|[\s.]+$/g, '');
  if (stem === '') return 'ticket';
  return DEVICE_NAMES.test(stem) ? `${stem}-ticket` : stem;
}

export const isTicketName = (name: string): boolean =>
  !name.startsWith('.') && name.toLowerCase().endsWith(TICKET_EXTENSION);

/** The name without its ticket extension. */
export const withoutExtension = (name: string): string =>
  isTicketName(name) ? name.slice(0, -TICKET_EXTENSION.length) : name;

/** The first of 'STEM', 'STEM (2)', 'STEM (3)'... that is not taken; upper and lower case count as the same. */
export function freeName(stem: string, taken: readonly string[]): string {
  const used = new Set(taken.map((name) => name.toLowerCase()));
  for (let number = 1; ; number++) {
    const name = `${number === 1 ? stem : `${stem} (${number})`}${TICKET_EXTENSION}`;
    if (!used.has(name.toLowerCase())) return name;
  }
}

/** A moment as it stands in file names: '2026-11-25 1412'. */
export function momentForName(at: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}${two(at.getMinutes())}`;
}

/** Stem of the copy that keeps a bench's own work when the file was changed elsewhere. */
export const conflictStem = (fileName: string, at: Date): string =>
  `${withoutExtension(fileName)} (other version ${momentForName(at)})`;
