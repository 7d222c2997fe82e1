import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { openSettings } from '../../../../main/settings/open-settings.ts';
import { createSettingsStore, type KeyStore } from '../../../../main/settings/settings-store.ts';
import { defaultSettings } from '../../../../shared-types/settings.ts';
import { temporaryFolder } from '../../../support/shell/folders.ts';

// electron-store asks the app for its folder and version; the rest of it is the real package.
vi.mock('electron', () => {
  const app = { getPath: () => '/nonexistent', getVersion: () => '0.0.0' };
  const electron = { app, ipcMain: { on: () => undefined }, shell: {} };
  return { ...electron, default: electron };
});

const stored = (folder: string) => JSON.parse(readFileSync(join(folder, 'settings.json'), 'utf8')) as unknown;

describe.each(['local', 'electron'] as const)('settings in the %s shell', (shell) => {
  test('are the defaults at first, and what was written afterwards', async () => {
    const folder = temporaryFolder();
    const { settings, problem } = await openSettings(shell, folder);
    expect(problem).toBeNull();
    expect(settings.read()).toEqual(defaultSettings);
    const wanted = { ...defaultSettings, theme: 'dark', technician: 'A. Bench' } as const;
    expect(settings.write(wanted)).toEqual({ ok: true, value: wanted });
    expect(stored(folder)).toMatchObject(wanted);
    const again = await openSettings(shell, folder);
    expect(again.settings.read()).toEqual(wanted);
  });

  test('two windows that each change a field keep both', async () => {
    const folder = temporaryFolder();
    const [one, other] = [await openSettings(shell, folder), await openSettings(shell, folder)];
    one.settings.write({ technician: 'A. Bench' });
    other.settings.write({ theme: 'dark' });
    expect(one.settings.read()).toEqual({ ...defaultSettings, technician: 'A. Bench', theme: 'dark' });
  });

  test('a file that is no JSON is set aside under a name that is told', async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'settings.json'), '{"theme": "da');
    const { settings, problem } = await openSettings(shell, folder);
    expect(settings.read()).toEqual(defaultSettings);
    expect(problem).toMatchObject({ code: 'not-json' });
    expect(readFileSync(join(folder, problem?.file ?? ''), 'utf8')).toBe('{"theme": "da');
    expect(settings.write({ ...defaultSettings, trayOpen: true }).ok).toBe(true);
  });

  test('a file with one field that does not fit keeps the others, and a copy', async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'settings.json'), JSON.stringify({ theme: 'purple', temperatureUnit: 'F', older: 1 }));
    const { settings, problem } = await openSettings(shell, folder);
    expect(settings.read()).toEqual({ ...defaultSettings, temperatureUnit: 'F' });
    expect(problem).toMatchObject({ code: 'invalid-field', where: 'theme' });
    expect(readdirSync(folder)).toContain(problem?.file);
  });
});

test('a settings file that cannot be written is told', () => {
  const refusing = (code: string): KeyStore => ({
    ...{ path: 'settings.json', store: defaultSettings, get: () => undefined },
    set: () => {
      throw Object.assign(new Error(code), { code });
    },
  });
  const write = (code: string) => createSettingsStore(refusing(code)).write(defaultSettings);
  expect(write('EACCES')).toMatchObject({ ok: false, problem: { code: 'not-allowed', file: 'settings.json' } });
  expect(write('ENOSPC')).toMatchObject({ ok: false, problem: { code: 'disk-full' } });
});

test('a folder in the place of the file is set aside', async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'settings.json'));
  const { settings, problem } = await openSettings('local', folder);
  expect(problem).toMatchObject({ code: 'not-readable' });
  expect(settings.write(defaultSettings).ok).toBe(true);
});

test('where nothing can be kept the program starts with the defaults and says so', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'app'), 'a file where the folder should be');
  const { settings, problem } = await openSettings('local', join(folder, 'app'));
  expect(problem).toMatchObject({ code: 'not-allowed', file: 'settings.json' });
  const wanted = { ...defaultSettings, theme: 'light' } as const;
  expect(settings.write(wanted)).toEqual({ ok: true, value: wanted });
  expect(settings.read()).toEqual(wanted);
});
