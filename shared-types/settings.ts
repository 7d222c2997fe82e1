import { z } from 'zod';
import { rememberedImportSchema } from './import-choices.ts';
import { ownPackagesSchema } from './own-package.ts';
import { stationSchema } from './plan.ts';
import { rememberedViewSchema } from './remembered-view.ts';

/** What a user sets once, for all tickets. */
export const settingsSchema = z.strictObject({
  theme: z.enum(['system', 'light', 'dark']),
  lengthUnit: z.enum(['mm', 'mil']),
  temperatureUnit: z.enum(['C', 'F']),
  wheelDoes: z.enum(['zoom', 'pan']),
  panelWidthPx: z.number().min(240).max(900).nullable(),
  trayOpen: z.boolean(),
  technician: z.string().max(200),
  stations: z.array(stationSchema).max(50).describe('Stations kept by name, for any ticket.'),
  packages: ownPackagesSchema,
  /** What was chosen for imported files, by the headings of their tables, the newest last. */
  rememberedImports: z.array(rememberedImportSchema).max(100),
  /** How tickets were left on this bench, the one left last at the end. */
  rememberedViews: z.array(rememberedViewSchema).max(100),
});
export type Settings = z.infer<typeof settingsSchema>;

export const defaultSettings: Settings = {
  theme: 'system',
  lengthUnit: 'mm',
  temperatureUnit: 'C',
  wheelDoes: 'zoom',
  panelWidthPx: null,
  trayOpen: false,
  technician: '',
  stations: [],
  packages: [],
  rememberedImports: [],
  rememberedViews: [],
};
