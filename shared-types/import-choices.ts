import { z } from 'zod';
import { pointSchema } from './geometry.ts';

/** What a column of a placement table may mean. */
export const COLUMN_MEANINGS = [
  'refdes',
  'x',
  'y',
  'rotation',
  'side',
  'mirror',
  'package',
  'value',
  'description',
  'height',
  'fitted',
  'unit',
  'referenceX',
  'referenceY',
  'padX',
  'padY',
  'embedded',
  'plain',
] as const;
export type Meaning = (typeof COLUMN_MEANINGS)[number];

export const LENGTH_WORDS = ['mm', 'mil', 'inch', 'um', 'cm'] as const;
export type LengthWord = (typeof LENGTH_WORDS)[number];

/** How written angles become turns (counter-clockwise seen from the top; bottom parts mirrored own y to -y before). */
export const turnRuleSchema = z.strictObject({
  top: z.enum(['same', 'opposite']),
  bottom: z.enum(['same', 'opposite', 'fromHalfTurn', 'plusHalfTurn']),
});
export type TurnRule = z.infer<typeof turnRuleSchema>;

/** Sides that a word may mean; parts on inner layers are not on the board. */
export const SIDE_MEANINGS = ['top', 'bottom', 'inner'] as const;
export type SideMeaning = (typeof SIDE_MEANINGS)[number];
const sideWordsSchema = z.record(z.string().max(60), z.enum(SIDE_MEANINGS));

/** What was said about tables of one shape. `columns`: a meaning for each column, in order. */
export const tableChoiceSchema = z.strictObject({
  columns: z.array(z.enum(COLUMN_MEANINGS)).max(500).optional(),
  unit: z.enum(LENGTH_WORDS).optional(),
  /** What the words of the side column mean, by the word as it is written. */
  sideWords: sideWordsSchema.optional(),
});
export type TableChoice = z.infer<typeof tableChoiceSchema>;

export const COVER_CHOICES = ['can', 'frame', 'part'] as const;

const shape = z.string().min(1).max(600);
const negation = z.enum(['asSeenFromTop', 'negated']);

/** What a user may decide where files leave it open. Absent: the importer's own choice. */
export const importChoicesSchema = z.strictObject({
  /** By the shape of the table's headings. */
  tables: z.record(shape, tableChoiceSchema).optional(),
  /** Side of tables that have no column for it, by file name. */
  sides: z.record(z.string().max(600), z.enum(['top', 'bottom'])).optional(),
  /** Unit of drawings (DXF, SVG), whatever they say. */
  drawingUnit: z.enum(LENGTH_WORDS).optional(),
  /** What the words of side columns mean, of all tables; what was said of a kind of tables wins. */
  sideWords: sideWordsSchema.optional(),
  bottomX: negation.optional(),
  bottomY: negation.optional(),
  turn: turnRuleSchema.optional(),
  /** From the placement file's origin to the Gerber origin, mm. */
  offset: pointSchema.optional(),
  /** Rank of the outline, as the report lists the candidates; 0 is the importer's own choice. */
  outline: z.int().min(0).max(10000).optional(),
  /** Of a panel's images that share references: all of them (unless said otherwise, so that nothing is lost), or the first. */
  panel: z.enum(['all', 'one']).optional(),
  /** Parts that are shield cans or frames, or are none though they were taken for one, by designator. */
  covers: z.record(z.string().max(64), z.enum(COVER_CHOICES)).optional(),
});
export type WindowImportChoices = z.infer<typeof importChoicesSchema>;

/** What was chosen for files of one kind, kept for the next ones with the same headings. */
export const rememberedImportSchema = z.strictObject({
  shape,
  table: tableChoiceSchema,
  bottomX: negation.optional(),
  bottomY: negation.optional(),
  turn: turnRuleSchema.optional(),
});
export type RememberedImport = z.infer<typeof rememberedImportSchema>;
