import { join } from 'node:path';
import { problemSentence } from '../shared-types/words/problems.ts';
import { doors } from '../shared-types/words/shell.ts';
import { serveConnection } from './contract/serve-connection.ts';
import { defaultAppFolder, defaultShelfFolder } from './files/folders.ts';
import { findBrowser, hasDisplay, openWindow } from './shells/local/browser.ts';
import { createLifetime } from './shells/local/lifetime.ts';
import { type LocalOptions, readLocalOptions } from './shells/local/options.ts';
import { type LocalServer, startServer } from './shells/local/server.ts';
import { socketCarrier } from './shells/local/socket-carrier.ts';
import { createPageFiles } from './shells/page-files.ts';
import { besideDoor, type StartedProgram, startProgram } from './shells/program-start.ts';

declare const __VERSION__: string;

const GRACE_MS = 3000;

/** The door for machines without Electron: a server on loopback and an app window of the installed browser. */
async function run(options: LocalOptions): Promise<void> {
  const { pagesFolder, samplesFolder, workerFile, sheetWorkerFile } = besideDoor(import.meta.dirname);
  const appFolder = options.appFolder ?? defaultAppFolder();
  const started = await startProgram({
    ...{ shell: 'local', version: __VERSION__, ticket: options.ticket, appFolder },
    shelfFolder: options.shelf ?? defaultShelfFolder(),
    ...{ samplesFolder, workerFile, sheetWorkerFile },
  });
  for (const problem of started.problems) console.error(problemSentence(problem));
  for (const name of started.adopted) console.error(doors.adopted(name));
  const lifetime = createLifetime(GRACE_MS, () => {
    if (!options.stay) void end();
  });
  const browser = options.window && hasDisplay() ? findBrowser() : null;
  const server = await startServer({
    port: options.port,
    pages: createPageFiles(pagesFolder),
    onSocket(socket) {
      // The address stood on the browser's command line, where other users of this machine can read it.
      if (browser) server.endStart();
      const leave = lifetime.enter();
      void serveConnection(started.program, socketCarrier(socket)).then(leave);
    },
  });
  const end = createEnd(started, server);
  process.once('SIGINT', () => void end());
  process.once('SIGTERM', () => void end());
  await show(options, server, browser, join(appFolder, 'browser'));
}

async function show(
  options: LocalOptions,
  server: LocalServer,
  browser: string | null,
  profileFolder: string,
): Promise<void> {
  if (browser && (await openWindow(browser, server.startAddress, profileFolder))) return;
  if (options.window) console.log(browser ? doors.browserFailed(browser) : doors.noBrowser(hasDisplay()));
  console.log(doors.address(server.startAddress));
}

/** Saves and closes everything, once; what could not be saved is said. */
function createEnd({ program }: StartedProgram, server: LocalServer): () => Promise<void> {
  let ending: Promise<void> | null = null;
  const end = async () => {
    const left = await program.close();
    await server.close();
    for (const problem of left) console.error(problemSentence(problem));
    process.exit(left.length > 0 ? 1 : 0);
  };
  return () => {
    ending ??= end();
    return ending;
  };
}

const options = readLocalOptions(process.argv.slice(2));
if (options) await run(options);
else {
  console.error(doors.usage);
  process.exitCode = 2;
}
