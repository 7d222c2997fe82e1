import { z } from 'zod';
import { sideSchema } from './geometry.ts';
import { COVER_CHOICES, SIDE_MEANINGS } from './import-choices.ts';
import type { ImportNoteCode } from './words/imports.ts';

/** What an import did, as the command line prints it and the window shows it. Lengths in mm. */

export type ImportWeight = 'stop' | 'warn' | 'note';

/** Something the import noticed. `refdes`: the parts it is about, all of them; the sentence names the first ones. */
export type ImportNote = {
  weight: ImportWeight;
  code: ImportNoteCode;
  file?: string;
  line?: number;
  refdes?: string[];
  detail?: Record<string, string | number>;
};

const names = z.array(z.string());
const count = z.number();

export const importedFileSchema = z.strictObject({
  name: z.string(),
  role: z.string(),
  by: z.enum(['content', 'function', 'name']),
});
export type ImportedFile = z.infer<typeof importedFileSchema>;

export const importedTableSchema = z.strictObject({
  file: z.string(),
  /** The same for files with the same headings: what was chosen for one is remembered for the next. */
  shape: z.string(),
  encoding: z.string(),
  separator: z.string(),
  headingLine: z.number().nullable(),
  decimalComma: z.boolean(),
  unit: z.string(),
  unitFrom: z.enum(['value', 'heading', 'preamble', 'pads', 'size', 'none', 'chosen']),
  sideFrom: z.enum(['column', 'preamble', 'name', 'pads', 'assumed', 'chosen']),
  columns: z.array(
    z.strictObject({
      heading: z.string(),
      meaning: z.string().nullable(),
      by: z.enum(['heading', 'content', 'chosen']),
    }),
  ),
  /** Cells of the first rows. */
  sample: z.array(names),
  rows: count,
  /** The words of its side column with what each was taken for; null: nothing, then the part was put on the top. */
  sideWords: z.array(
    z.strictObject({ word: z.string(), side: z.enum(SIDE_MEANINGS).nullable(), count, chosen: z.boolean() }),
  ),
});
export type ImportedTable = z.infer<typeof importedTableSchema>;

/** A closed polygon, thinned for a small picture. */
const polygon = z.array(z.tuple([z.number(), z.number()]));

const outlineCandidateSchema = z.strictObject({
  rank: count,
  file: z.string(),
  lengthMm: count,
  widthMm: count,
  sharePercent: count,
  polygon,
});
export type OutlineCandidateWords = z.infer<typeof outlineCandidateSchema>;

const share = z.strictObject({ right: count, of: count });

/** The check of placements against pads that carry references (Gerber X2). Counts are parts. */
const padCheckSchema = z.strictObject({
  layer: z.enum(['copper', 'mask', 'paste', 'netlist']),
  withPads: count,
  side: z.strictObject({ right: count, throughHole: count, wrong: names }),
  centre: z.strictObject({
    within: count,
    limitMm: count,
    off: z.array(z.strictObject({ refdes: z.string(), mm: count, packageName: z.string(), why: z.string() })),
  }),
  turn: z.strictObject({
    limitDegrees: count,
    manyPins: share,
    twoPads: z.strictObject({ right: count, of: count, rightWithPinNumbers: count }),
    /** The only part of its package: its pads lie along its own axes (modulo 90 degrees). */
    alone: z.strictObject({ alongAxes: count, of: count, others: names }),
    /** One pad, or several of one pin: pads cannot tell a turn. */
    onePin: count,
    wrong: z.array(z.strictObject({ refdes: z.string(), degrees: count })),
  }),
  withoutPads: names,
  padsOnly: names,
});
export type PadCheck = z.infer<typeof padCheckSchema>;

/** What the files tell at all: for an update, which takes nothing else from them. Names are designators. */
const toldSchema = z.strictObject({
  /** Sides on which they place parts. */
  sides: z.array(sideSchema),
  outline: z.boolean(),
  turns: z.boolean(),
  layers: z.boolean(),
  /** Parts of which they say whether the position is fitted; of which they give the height; whose size they do not tell. */
  fitted: names,
  heights: names,
  sizeless: names,
  /** Designators that stand for several parts, with the names that these were given. */
  doubles: z.array(z.strictObject({ refdes: z.string(), all: names })),
  /** Named by a bill of materials, to be fitted, without a place. */
  unplaced: names,
});

/** The report without its notes, which travel as sentences. */
export const importReportSchema = z.strictObject({
  files: z.array(importedFileSchema),
  tables: z.array(importedTableSchema),
  /** DXF and SVG drawings and the units they were read in. */
  drawings: z.array(
    z.strictObject({
      file: z.string(),
      unit: z.string(),
      unitBy: z.enum(['said', 'parts', 'size', 'usual', 'chosen']),
    }),
  ),
  counts: z.strictObject({ top: count, bottom: count, inner: count, unread: count, legend: count }),
  outline: z.strictObject({
    file: z.string().nullable(),
    lengthMm: count,
    widthMm: count,
    cutouts: count,
    arcs: count,
    why: z.enum(['smallest', 'largest', 'best', 'pads', 'chosen', 'parts']),
    sharePercent: count,
    others: z.array(outlineCandidateSchema),
  }),
  offset: z.strictObject({
    xMm: count,
    yMm: count,
    by: z.enum(['references', 'pairs', 'own', 'inside', 'corner', 'chosen', 'none']),
    votes: count,
    of: count,
  }),
  shift: z.strictObject({ xMm: count, yMm: count }),
  /** How x of the bottom and written angles were read; `agreeing` of `of` parts turn like others of their package. */
  sense: z.strictObject({
    xNegated: z.boolean(),
    yNegated: z.boolean(),
    xBy: z.enum(['pads', 'signs', 'usual', 'chosen']),
    top: z.string(),
    bottom: z.string(),
    turnsBy: z.enum(['pads', 'columns', 'none']),
    turnsChosen: z.boolean(),
    agreeing: count,
    of: count,
  }),
  /** Images of a panel that share references; `strays`: parts that stand once and belong to no image that was taken. */
  panel: z.strictObject({ images: count, taken: z.enum(['all', 'one']), leftOut: count, strays: names }).nullable(),
  check: padCheckSchema.nullable(),
  /** Shield cans and frames, and parts that may be one; lengths null: not told, then it stays a part. */
  covers: z.array(
    z.strictObject({
      refdes: z.string(),
      as: z.enum(COVER_CHOICES),
      /** By its designator, by words of package or value, or because it lies over others. */
      by: z.enum(['name', 'words', 'over']),
      chosen: z.boolean(),
      /** Parts that stand under it. */
      under: count,
      lengthMm: count.nullable(),
      widthMm: count.nullable(),
    }),
  ),
  told: toldSchema,
});
export type ImportFacts = z.infer<typeof importReportSchema>;
export type ImportReport = ImportFacts & { notes: ImportNote[] };
