import { BrowserWindow } from 'electron';
import { START_URL } from './app-scheme.ts';

/** Opens the program's window; it is shown once it has something to show. */
export async function openMainWindow(preloadFile: string): Promise<BrowserWindow> {
  const window = new BrowserWindow({
    ...{ width: 1366, height: 768, minWidth: 1024, minHeight: 640 },
    ...{ show: false, title: 'Heatmargin', autoHideMenuBar: true },
    webPreferences: {
      ...{ preload: preloadFile, contextIsolation: true, sandbox: true, webSecurity: true },
      ...{ nodeIntegration: false, nodeIntegrationInWorker: false, nodeIntegrationInSubFrames: false },
      ...{ webviewTag: false, spellcheck: false, navigateOnDragDrop: false },
    },
  });
  window.once('ready-to-show', () => window.show());
  await window.loadURL(START_URL);
  return window;
}
