// The installed Chromium, opened as the browser tests open it.
import { resolve } from 'node:path';
import { chromium } from '@playwright/test';
import { runnerImport } from 'vite';

const CONFIGURATION = resolve(import.meta.dirname, '../../playwright.config.ts');

export async function openBrowser() {
  const { module } = await runnerImport(CONFIGURATION, { logLevel: 'error' });
  return chromium.launch(module.default.use.launchOptions);
}
