import { z } from 'zod';

/** What the work map can be saved as: one PDF, or each page as a picture of its own. */
export const sheetFormatSchema = z.enum(['pdf', 'svg', 'png']);
export type SheetFormat = z.infer<typeof sheetFormatSchema>;

/** Dots per inch of a page saved as PNG: hairlines stay sharp and a page takes about a second; from the command line between the other two. */
export const SHEET_DPI = { usual: 200, least: 50, most: 600 } as const;
