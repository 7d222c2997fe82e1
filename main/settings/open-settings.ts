import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Problem } from '../../shared-types/problem.ts';
import type { Settings } from '../../shared-types/settings.ts';
import { quarantineSettings } from './quarantine.ts';
import { createSettingsStore, type KeyStore, type SettingsStore } from './settings-store.ts';

export type OpenedSettings = { settings: SettingsStore; problem: Problem | null };

/** Settings kept by electron-store (in Electron only: it speaks to the app) or by conf. Both write settings.json in the folder. */
export async function openSettings(kind: 'electron' | 'local', folder: string): Promise<OpenedSettings> {
  mkdirSync(folder, { recursive: true });
  const problem = quarantineSettings(join(folder, 'settings.json'), new Date());
  const store = kind === 'electron' ? await electronStore(folder) : await confStore(folder);
  return { settings: createSettingsStore(store), problem };
}

async function confStore(folder: string): Promise<KeyStore> {
  const { default: Conf } = await import('conf');
  return new Conf<Settings>({ cwd: folder, configName: 'settings' });
}

async function electronStore(folder: string): Promise<KeyStore> {
  const { default: ElectronStore } = await import('electron-store');
  return new ElectronStore<Settings>({ cwd: folder, name: 'settings' });
}
