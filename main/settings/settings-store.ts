import type Conf from 'conf';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import { defaultSettings, type Settings, settingsSchema } from '../../shared-types/settings.ts';

/** What both stores (electron-store in Electron, conf elsewhere) have in common. */
export type KeyStore = Pick<Conf<Settings>, 'get' | 'set' | 'path' | 'store'>;

export type SettingsStore = {
  read(): Settings;
  /** Changes the given fields and no others; all settings then. Errors: not-allowed or disk-full when the file cannot be written. */
  write(settings: Partial<Settings>): Result<Settings>;
};

/** Settings over either store. Fields that an older program did not know have their default. */
export function createSettingsStore(store: KeyStore): SettingsStore {
  const read = (): Settings => settingsFrom(store.store).settings;
  return {
    read,
    write(settings) {
      try {
        store.set(settings);
        return succeed(read());
      } catch (error) {
        const full = (error as NodeJS.ErrnoException).code === 'ENOSPC';
        return fail(full ? 'disk-full' : 'not-allowed', { file: 'settings.json' });
      }
    },
  };
}

/** The settings in a stored value, field by field, and the fields that did not fit. */
export function settingsFrom(stored: unknown): { settings: Settings; unfit: string[] } {
  const given = typeof stored === 'object' && stored !== null ? (stored as Record<string, unknown>) : {};
  const unfit: string[] = [];
  const settings = Object.entries(settingsSchema.shape).map(([key, schema]) => {
    const checked = schema.safeParse(given[key]);
    if (!checked.success && key in given) unfit.push(key);
    return [key, checked.success ? checked.data : defaultSettings[key as keyof Settings]];
  });
  return { settings: Object.fromEntries(settings) as Settings, unfit };
}
