import { app } from 'electron';
import { openApp } from './shells/electron/open-app.ts';

// Not awaited: Electron becomes ready only after this file has run to its end.
openApp(import.meta.dirname).catch((error: unknown) => {
  console.error(error);
  app.exit(1);
});
