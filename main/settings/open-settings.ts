import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from '../../shared-types/problem.ts';
import { defaultSettings, type Settings } from '../../shared-types/settings.ts';
import { quarantineSettings } from './quarantine.ts';
import { createSettingsStore, type KeyStore, type SettingsStore } from './settings-store.ts';

export type OpenedSettings = { settings: SettingsStore; problem: Problem | null };

/**
 * Settings kept by electron-store (in Electron only: it speaks to the app) or by conf. Both write settings.json in the folder.
 * Where nothing can be kept the program still starts, with the defaults, and says so.
 */
export async function openSettings(kind: 'electron' | 'local', folder: string): Promise<OpenedSettings> {
  try {
    mkdirSync(folder, { recursive: true });
    const problem = quarantineSettings(join(folder, 'settings.json'), new Date());
    const store = kind === 'electron' ? await electronStore(folder) : await confStore(folder);
    return { settings: createSettingsStore(store), problem };
  } catch (error) {
    if (typeof (error as NodeJS.ErrnoException).code !== 'string') throw error;
    return { settings: createSettingsStore(passingStore()), problem: { code: 'not-allowed', file: 'settings.json' } };
  }
}

/** Keeps settings for as long as the program runs. */
function passingStore(): KeyStore {
  let kept = defaultSettings;
  return {
    path: '',
    get store() {
      return kept;
    },
    get: (key: keyof Settings) => kept[key],
    set: (settings: Partial<Settings>) => {
      kept = { ...kept, ...settings };
    },
  } as KeyStore;
}

async function confStore(folder: string): Promise<KeyStore> {
  const { default: Conf } = await import('conf');
  return new Conf<Settings>({ cwd: folder, configName: 'settings' });
}

async function electronStore(folder: string): Promise<KeyStore> {
  const { default: ElectronStore } = await import('electron-store');
  return new ElectronStore<Settings>({ cwd: folder, name: 'settings' });
}
