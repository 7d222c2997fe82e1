import { z } from 'zod';
import { boardSchema } from './board.ts';
import type { Assessment } from './evaluation.ts';
import { importChoicesSchema } from './import-choices.ts';
import { importedFileSchema, importedTableSchema, importReportSchema } from './import-report.ts';
import { planSchema, stationSchema } from './plan.ts';

import { type Problem, problemSchema, type Result } from './problem.ts';
import { searchAnswerSchema, searchOrderSchema } from './profile-search.ts';
import { settingsSchema } from './settings.ts';
import { sheetFormatSchema } from './sheet-format.ts';
import { preheaterFitSchema } from './station-fit.ts';
import { calibrationAnswerSchema, calibrationOrderSchema, type FitProgress, logTableSchema } from './study.ts';

/**
 * The contract between the window and main. Every shell carries the same requests and the same events.
 * A request is checked on the way in and its answer on the way out; a refusal is a `Problem`.
 * Bytes (PDF, files) travel as binary beside the JSON.
 */

/** One change of a document, as made by the patch library: path into {board, plan}. */
export const patchSchema = z.strictObject({
  op: z.enum(['add', 'remove', 'replace']),
  path: z.array(z.union([z.string(), z.number()])).max(20),
  value: z.unknown().optional(),
});
export type DocumentPatch = z.infer<typeof patchSchema>;

export const documentSchema = z.strictObject({ board: boardSchema, plan: planSchema });

const ticketId = z.string().min(1).max(200).describe('Opaque id of a ticket; pages never see paths.');
const revision = z.int().min(0);
const bytes = z.instanceof(Uint8Array);
const floats = z.custom<Float32Array>((value) => value instanceof Float32Array);
const fieldGridSchema = z.strictObject({
  ...{ columns: z.int(), rows: z.int(), cellMm: z.number(), originX: z.number(), originY: z.number() },
  grownFromMm: z.number().nullable(),
});
const namedFile = z.strictObject({ name: z.string().min(1).max(300), bytes });

/** A card of the ticket shelf: what its small drawing and its words need, nothing more. */
export const ticketCardSchema = z.strictObject({
  id: ticketId,
  fileName: z.string(),
  number: z.string(),
  boardName: z.string(),
  target: z.string(),
  invented: z.boolean(),
  sample: z.boolean(),
  changedAt: z.string(),
  counts: z.strictObject({ parts: z.int(), sites: z.int(), tags: z.int(), heatRuns: z.int() }),
  /** Outline as a polygon and the bodies as [x, y, length, width, turn], mm; sites as turned rectangles too. */
  drawing: z.strictObject({
    outline: z.array(z.tuple([z.number(), z.number()])),
    top: z.array(z.array(z.number())),
    sites: z.array(z.array(z.number())),
  }),
  problem: problemSchema.nullable(),
});
export type TicketCard = z.infer<typeof ticketCardSchema>;

export const importNoteSchema = z.strictObject({
  weight: z.enum(['stop', 'warn', 'note']),
  sentence: z.string(),
  refdes: z.array(z.string()).optional(),
});

export const openedTicketSchema = z.strictObject({
  id: ticketId,
  fileName: z.string(),
  revision,
  document: documentSchema,
  /** Set when unsaved changes were found after a crash and taken over. */
  recovered: z.boolean(),
  /** What the import of a drawing had to say; only after `ticket.openFile` of one. */
  notes: z.array(importNoteSchema).optional(),
});
export type OpenedTicket = z.infer<typeof openedTicketSchema>;

/** An earlier version of a ticket, kept before its file was replaced. */
export const ticketVersionSchema = z.strictObject({ id: z.string().min(1).max(100), savedAt: z.string() });
export type TicketVersion = z.infer<typeof ticketVersionSchema>;

const picturePieceSchema = z.strictObject({
  id: ticketId,
  arrival: z.string().min(1).max(64).describe('Which picture on its way, as the window names it.'),
  size: z.int().min(0).describe('Of the whole picture, bytes.'),
  at: z.int().min(0).describe('Where the piece begins.'),
  bytes,
});
export type PicturePiece = z.infer<typeof picturePieceSchema>;

const none = z.strictObject({});

/** Requests of the window: name -> what goes in, what comes out. */
export const requests = {
  'shelf.list': { input: none, output: z.strictObject({ folder: z.string(), cards: z.array(ticketCardSchema) }) },
  'samples.list': { input: none, output: z.strictObject({ cards: z.array(ticketCardSchema) }) },
  'ticket.new': {
    input: z.strictObject({ number: z.string().min(1).max(100), document: documentSchema }),
    output: openedTicketSchema,
  },
  'ticket.open': { input: z.strictObject({ id: ticketId }), output: openedTicketSchema },
  /** A copy of a sample on the shelf, opened. */
  'ticket.fromSample': {
    input: z.strictObject({ id: ticketId, number: z.string().min(1).max(100) }),
    output: openedTicketSchema,
  },
  /** A dropped or chosen ticket, board or set of drawing files. */
  'ticket.openFile': { input: z.strictObject({ file: namedFile }), output: openedTicketSchema },
  'ticket.patch': {
    input: z.strictObject({ id: ticketId, base: revision, patches: z.array(patchSchema).max(100000) }),
    /** `gap`: main holds another revision; the window sends the whole document with `ticket.replace`. */
    output: z.strictObject({ revision, gap: z.boolean() }),
  },
  'ticket.replace': {
    input: z.strictObject({ id: ticketId, document: documentSchema }),
    output: z.strictObject({ revision }),
  },
  'ticket.save': {
    input: z.strictObject({ id: ticketId }),
    output: z.strictObject({ savedAt: z.string(), conflictCopy: z.string().nullable() }),
  },
  /** Earlier versions of a ticket, newest first. */
  'ticket.versions': {
    input: z.strictObject({ id: ticketId }),
    output: z.strictObject({ versions: z.array(ticketVersionSchema) }),
  },
  /** An earlier version as a new ticket beside the present one, opened; the present one stays as it is. */
  'ticket.openVersion': {
    input: z.strictObject({ id: ticketId, version: z.string().max(100) }),
    output: openedTicketSchema,
  },
  /**
   * Takes a picture into the ticket, piece by piece in turn; the last answer tells the hash, by which a patch of the board then names it.
   * Errors: not-a-picture, too-large, invalid-field.
   */
  'photo.add': { input: picturePieceSchema, output: z.strictObject({ sha256: z.string().nullable() }) },
  /** The bytes of a picture of the ticket. Errors: not-found. */
  'photo.read': {
    input: z.strictObject({ id: ticketId, sha256: z.string().max(64) }),
    output: z.strictObject({ bytes }),
  },
  'ticket.close': { input: z.strictObject({ id: ticketId }), output: none },
  'ticket.remove': { input: z.strictObject({ id: ticketId }), output: none },
  'import.read': {
    /** `onto`: the open ticket whose board the files are to update. */
    input: z.strictObject({
      files: z.array(namedFile).min(1).max(500),
      choices: importChoicesSchema,
      onto: ticketId.optional(),
    }),
    /** `read`: null where the files give no board, which `problem` then says; files and tables are told all the same. */
    output: z.strictObject({
      read: z
        .strictObject({ board: boardSchema, notes: z.array(importNoteSchema), report: importReportSchema })
        .nullable(),
      problem: problemSchema.nullable(),
      files: z.array(importedFileSchema),
      tables: z.array(importedTableSchema),
    }),
  },
  'evaluation.run': {
    input: z.strictObject({ id: ticketId, phase: z.enum(['coarse', 'fine', 'both']) }),
    output: none,
  },
  'evaluation.cancel': { input: z.strictObject({ id: ticketId }), output: none },
  /** The map of one moment, of the newest fine evaluation; an earlier one is refused as 'stale-evaluation'. */
  'evaluation.moment': {
    input: z.strictObject({ id: ticketId, revision, runId: z.string().max(64), atS: z.number().min(0).max(1e6) }),
    output: z.strictObject({ atS: z.number(), grid: fieldGridSchema, top: floats, bottom: floats }),
  },
  /** Curves of some parts and watch points of a heat run, of the newest fine evaluation. */
  'evaluation.curves': {
    input: z.strictObject({
      ...{ id: ticketId, revision, runId: z.string().max(64) },
      refdes: z.array(z.string().max(64)).max(12),
      tagIds: z.array(z.string().max(64)).max(50),
    }),
    output: z.strictObject({
      stepS: z.number(),
      parts: z.array(
        z.strictObject({ refdes: z.string(), body: floats, skin: floats, jointMax: floats, jointMin: floats }),
      ),
      points: z.array(z.strictObject({ tagId: z.string(), name: z.string(), celsius: floats })),
      preheater: floats,
      site: floats.nullable(),
    }),
  },
  /** Film and lag of the ticket's preheater that fit these readings of its board; nothing is changed by asking. */
  'preheater.fit': {
    input: z.strictObject({ id: ticketId, boardReadings: stationSchema.shape.boardReadings.unwrap() }),
    output: preheaterFitSchema,
  },
  /** A logger's file as columns; it concerns no ticket yet. Errors: not-text, wrong-format. */
  'calibration.readLog': { input: z.strictObject({ file: namedFile }), output: logTableSchema },
  /** Fits the station to a logged run; answered when it is done. Nothing is changed by asking. Errors: cancelled. */
  'calibration.fit': {
    input: z.strictObject({ id: ticketId, order: calibrationOrderSchema }),
    output: calibrationAnswerSchema,
  },
  /** Looks for a better profile of a heat run; answered when it is done. Nothing is changed by asking. Errors: cancelled. */
  'search.run': { input: z.strictObject({ id: ticketId, order: searchOrderSchema }), output: searchAnswerSchema },
  /** Ends a calibration or a search of the ticket; whoever waits for it hears 'cancelled'. */
  'study.cancel': { input: z.strictObject({ id: ticketId }), output: none },
  /** The work map as a PDF, or its pages as pictures in a ZIP. */
  'workMap.render': {
    input: z.strictObject({ id: ticketId, format: sheetFormatSchema }),
    output: z.strictObject({ fileName: z.string(), bytes, pages: z.int() }),
  },
  /** The pages of the work map as SVG, as they would print now; nothing is saved. */
  'workMap.preview': { input: z.strictObject({ id: ticketId }), output: z.strictObject({ pages: z.array(bytes) }) },
  'settings.read': { input: none, output: settingsSchema },
  /** `settings`: the fields that change; another window may have written others in the meantime. */
  'settings.write': { input: z.strictObject({ settings: settingsSchema.partial() }), output: settingsSchema },
  'about.read': {
    input: none,
    output: z.strictObject({
      version: z.string(),
      shell: z.enum(['electron', 'local']),
      shelfFolder: z.string(),
      node: z.string(),
      /** The ticket that the program was started with, to be opened first. */
      startTicket: ticketId.nullable(),
      /** What the import had to say when that was a drawing. */
      startNotes: z.array(importNoteSchema),
      /** What was found at the start and concerns no single ticket, such as a settings file set aside. */
      startProblems: z.array(problemSchema),
    }),
  },
} as const;

export type RequestName = keyof typeof requests;
export type RequestInput<N extends RequestName> = z.infer<(typeof requests)[N]['input']>;
export type RequestOutput<N extends RequestName> = z.infer<(typeof requests)[N]['output']>;

/** Events of main: the window listens. An assessment carries typed arrays, so it is a plain type, not a schema. */
export type MainEvent =
  | { name: 'evaluation.progress'; id: string; revision: number; phase: 'coarse' | 'fine' | 'bands'; share: number }
  | { name: 'evaluation.result'; id: string; revision: number; phase: 'coarse' | 'fine'; assessment: Assessment }
  | { name: 'evaluation.failed'; id: string; revision: number; problem: Problem }
  | { name: 'study.progress'; id: string; share: number; fit?: FitProgress }
  | {
      name: 'ticket.saved';
      id: string;
      revision: number;
      savedAt: string;
      state: 'journal' | 'file';
      conflictCopy: string | null;
    }
  | { name: 'ticket.problem'; id: string; problem: Problem };

/** What every carrier offers the window. */
export type Backend = {
  request<N extends RequestName>(name: N, input: RequestInput<N>): Promise<Result<RequestOutput<N>>>;
  listen(listener: (event: MainEvent) => void): () => void;
};
