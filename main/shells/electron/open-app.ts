import { app, BrowserWindow, Menu, session } from 'electron';
import { defaultShelfFolder } from '../../files/folders.ts';
import { createPageFiles } from '../page-files.ts';
import { besideDoor, startProgram } from '../program-start.ts';
import { declareScheme, serveScheme } from './app-scheme.ts';
import { offerContractPorts } from './contract-ports.ts';
import { saveBeforeQuitting } from './end-program.ts';
import { openMainWindow } from './main-window.ts';
import { denyPermissions, refuseNavigation } from './refusals.ts';
import { ticketArgument } from './ticket-argument.ts';

/** Starts the app: one instance, everything refused that the window does not need, then the program and its window. */
export async function openApp(doorFolder: string): Promise<void> {
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  const { pagesFolder, preloadFile, samplesFolder, ...workers } = besideDoor(doorFolder);
  app.enableSandbox();
  declareScheme();
  app.on('web-contents-created', (_event, contents) => refuseNavigation(contents));
  app.on('window-all-closed', () => app.quit());
  app.on('second-instance', () => raise(BrowserWindow.getAllWindows().at(0)));
  await app.whenReady();
  if (process.platform !== 'darwin') Menu.setApplicationMenu(null);
  denyPermissions(session.defaultSession);
  serveScheme(createPageFiles(pagesFolder));
  const { program } = await startProgram({
    ...{ shell: 'electron', version: app.getVersion(), ticket: ticketArgument(process.argv) },
    ...{ shelfFolder: defaultShelfFolder(), appFolder: app.getPath('userData') },
    ...{ samplesFolder, ...workers },
  });
  saveBeforeQuitting(program);
  offerContractPorts(program);
  await openMainWindow(preloadFile);
}

function raise(window: BrowserWindow | undefined): void {
  if (window?.isMinimized()) window.restore();
  window?.focus();
}
