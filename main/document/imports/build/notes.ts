import type { ImportNote } from '../../../../shared-types/import-report.ts';
import { DRAWING_FAILURES } from '../../../../shared-types/words/drawings.ts';
import {
  DESIGN_FAILURES,
  KIND_WORDS,
  nameList,
  ROLE_WORDS,
  TURN_WORDS,
} from '../../../../shared-types/words/imports.ts';
import type { Recognised } from '../files/recognise.ts';
import type { Archive } from '../files/unpack.ts';
import type { GerberFailure, GerberNote } from '../gerber/types.ts';
import type { TurnRule } from '../pads/turn.ts';
import type { PlacementTable, RowFault } from '../placements/types.ts';

/** Why a Gerber layer was refused. */
export const GERBER_FAILURES: Readonly<Record<GerberFailure['reason'], string>> = {
  notGerber: 'no drawing commands in it',
  tooManyObjects: 'its repeats ask for more objects than any board has',
  nestedTooDeep: 'its blocks are nested too deep',
  badMacro: 'one of its macros cannot be read',
};

/** Kinds of files that a board can be made from. */
const GIVING = new Set<Recognised['kind']>(['design', 'placements', 'layer', 'netlist', 'bill', 'drawing']);

/** What was in the archives, and which members the board was made from. */
export function archiveNotes(archives: readonly Archive[], files: readonly Recognised[]): ImportNote[] {
  const read = files.filter(({ kind }) => GIVING.has(kind)).map(({ name }) => name);
  return archives.map(({ name, members }) => {
    const used = members.filter((member) => read.some((name) => name === member || name.startsWith(`${member} [`)));
    return {
      weight: 'note',
      code: 'archive-opened',
      file: name,
      detail: { count: members.length, used: nameList(used) || '-' },
    };
  });
}

/** What a file that gives nothing was. */
export function fileNotes(files: readonly Recognised[]): ImportNote[] {
  return files.flatMap((file): ImportNote[] => {
    if (file.kind === 'noText') {
      return [
        {
          weight: 'note',
          code: 'file-not-read',
          file: file.name,
          detail: { what: KIND_WORDS[file.reason] ?? file.reason },
        },
      ];
    }
    if (file.kind === 'brokenDesign') {
      const what = DESIGN_FAILURES[file.failure.reason];
      return [{ weight: 'warn', code: 'file-not-read', file: file.name, line: file.failure.line, detail: { what } }];
    }
    if (file.kind === 'brokenDrawing') {
      const what = `${KIND_WORDS.brokenDrawing}: ${DRAWING_FAILURES[file.failure.reason]}`;
      return [{ weight: 'warn', code: 'file-not-read', file: file.name, line: file.failure.line, detail: { what } }];
    }
    if (file.kind === 'other') {
      return [
        {
          weight: 'note',
          code: 'file-not-used',
          file: file.name,
          detail: { what: KIND_WORDS[file.what] ?? file.what },
        },
      ];
    }
    if (file.kind === 'unusedLayer') {
      return [
        {
          weight: 'note',
          code: 'file-not-used',
          file: file.name,
          detail: { what: `${ROLE_WORDS[file.role]}, ${KIND_WORDS['inner-layer']}` },
        },
      ];
    }
    if (file.kind === 'brokenLayer') {
      const reason = GERBER_FAILURES[file.failure.reason];
      return [{ weight: 'warn', code: 'layer-broken', file: file.name, line: file.failure.line, detail: { reason } }];
    }
    return [];
  });
}

const GERBER_WORDS: Readonly<Record<GerberNote['kind'], (detail: string) => string>> = {
  unitsAssumed: (detail) => `The Gerber file does not say its unit; ${detail} were taken.`,
  formatAssumed: (detail) => `The Gerber file does not say its number format; ${detail} was taken.`,
  unknownCommand: (detail) => `The Gerber command '${detail}' is not known and was passed over.`,
  unsupportedCommand: (detail) => `The old Gerber command '${detail}' was passed over; check the drawing.`,
  noEnd: () => 'The Gerber file has no end mark: it may be cut short.',
  badNumber: (detail) => `The Gerber file holds a coordinate that is no number ('${detail}').`,
  apertureMissing: (detail) => `The Gerber file uses aperture ${detail}, which it does not define.`,
  openContour: () => 'A Gerber region was not closed; it was closed by a straight edge.',
};

const MAX_GERBER_NOTES = 5;
const HARMLESS = new Set<GerberNote['kind']>(['openContour']);

/** Remarks on a layer that the board is made from. */
export function gerberNotes(file: string, notes: readonly GerberNote[]): ImportNote[] {
  return notes
    .filter(({ kind }) => !HARMLESS.has(kind))
    .slice(0, MAX_GERBER_NOTES)
    .map(({ kind, detail, line }) => ({
      weight: kind === 'unknownCommand' ? 'note' : 'warn',
      code: 'gerber-remark',
      file,
      line,
      detail: { what: GERBER_WORDS[kind](detail) },
    }));
}

/** What reading a placement table brought up. */
export function tableNotes(table: PlacementTable): ImportNote[] {
  const { file, columns } = table;
  const unknown = columns.filter(({ meaning }) => meaning === null).map(({ heading }) => `'${heading}'`);
  const guessed = columns.flatMap(({ heading, meaning }) => (meaning ? [`${heading} ${meaning}`] : []));
  const notes: (ImportNote | false)[] = [
    table.encodingGuessed && { weight: 'note', code: 'encoding-guessed', file, detail: { encoding: table.encoding } },
    table.headingLine === null && {
      weight: 'warn',
      code: 'columns-guessed',
      file,
      detail: { columns: guessed.join(', ') },
    },
    table.headingLine !== null &&
      unknown.length > 0 && {
        weight: 'note',
        code: 'columns-not-known',
        file,
        detail: { columns: unknown.join(', ') },
      },
    table.placements.length === 0 && table.faults.length === 0 && { weight: 'note', code: 'heading-only', file },
    table.decimalComma && { weight: 'note', code: 'decimal-comma', file },
    ...sideNotes(table),
    ...faultNotes(table),
  ];
  return notes.filter((note) => note !== false);
}

function sideNotes({ file, sideFrom, placements }: PlacementTable): (ImportNote | false)[] {
  if (placements.length === 0) return [];
  const from = sideFrom === 'name' ? 'name' : 'head';
  return [
    sideFrom === 'assumed' && { weight: 'warn', code: 'side-assumed', file },
    sideFrom === 'pads' && { weight: 'note', code: 'side-from-pads', file },
    (sideFrom === 'name' || sideFrom === 'preamble') && {
      weight: 'note',
      code: 'side-from-name',
      file,
      detail: { side: placements[0].side, source: from },
    },
  ];
}

function faultNotes({ file, faults, placements }: PlacementTable): ImportNote[] {
  const refsAt = (kind: RowFault['fault']) => {
    const lines = new Set(faults.filter(({ fault }) => fault === kind).map(({ line }) => line));
    return placements.filter(({ line }) => lines.has(line)).map(({ refdes }) => refdes);
  };
  const unread = faults.filter(({ fault }) => fault !== 'side' && fault !== 'rotation');
  const notes: ImportNote[] = [];
  if (unread.length > 0) {
    const lines = unread
      .slice(0, 10)
      .map(({ line }) => line)
      .join(', ');
    const detail = { count: unread.length, text: unread[0].text, lines: unread.length > 10 ? `${lines} ...` : lines };
    notes.push({ weight: 'warn', code: 'rows-not-read', file, line: unread[0].line, detail });
  }
  const turns = refsAt('rotation');
  if (turns.length > 0) notes.push({ weight: 'warn', code: 'turn-not-read', file, refdes: turns });
  const sides = refsAt('side');
  const word = faults.find(({ fault }) => fault === 'side')?.word ?? '';
  if (sides.length > 0) notes.push({ weight: 'warn', code: 'side-not-read', file, refdes: sides, detail: { word } });
  return notes;
}

export function turnSenseNote({ top, bottom }: TurnRule): ImportNote[] {
  if (top === 'same' && bottom === 'same') return [];
  return [{ weight: 'warn', code: 'turn-sense', detail: { top: TURN_WORDS[top], bottom: TURN_WORDS[bottom] } }];
}
