import { join } from 'node:path';
import type { Problem } from '../../shared-types/problem.ts';
import type { Settings } from '../../shared-types/settings.ts';
import { createProgram, type Program } from '../contract/program.ts';
import { nodeFileSystem } from '../files/file-system.ts';
import { createSamples } from '../files/samples.ts';
import { findStartTicket } from '../files/start-ticket.ts';
import type { Pictures } from '../files/ticket-photos.ts';
import { createTickets, type Tickets } from '../files/tickets.ts';
import { openSettings } from '../settings/open-settings.ts';
import { createBandedEvaluator } from '../workers/banded-evaluator.ts';
import { createEvaluationWorker } from '../workers/evaluation-worker-handle.ts';
import type { EvaluatedTicket } from '../workers/evaluator.ts';
import { createStudyDesk } from '../workers/study-desk.ts';
import { drawPagesInWorker, printInWorker, type Sheet } from './sheet-printer.ts';

export type StartOptions = {
  shell: 'electron' | 'local';
  version: string;
  shelfFolder: string;
  appFolder: string;
  samplesFolder: string;
  workerFile: string;
  sheetWorkerFile: string;
  /** A ticket, board or drawing file to open first, wherever it lies. */
  ticket: string | null;
};

export type StartedProgram = { program: Program; tickets: Tickets; problems: Problem[]; adopted: string[] };

/** Puts the services together; both windowed doors start here. */
export async function startProgram(options: StartOptions): Promise<StartedProgram> {
  const { settings, problem } = await openSettings(options.shell, options.appFolder);
  const tickets = createTickets({ fs: nodeFileSystem, ...options });
  const adopted = await tickets.adoptOrphans();
  const startTicket = await findStartTicket(nodeFileSystem, tickets, options.ticket);
  const startProblems = [problem, startTicket.problem].filter((one) => one !== null);
  const sheetOf = (ticket: EvaluatedTicket, pictures: Pictures): Sheet => ({
    ...{ ticket, pictures, programVersion: options.version, units: unitsOf(settings.read()) },
  });
  const program = createProgram({
    tickets,
    settings,
    samples: createSamples(nodeFileSystem, options.samplesFolder),
    renderWorkMap: (ticket, pictures, format) =>
      printInWorker(options.sheetWorkerFile, sheetOf(ticket, pictures), format),
    drawSheetPages: (ticket, pictures) => drawPagesInWorker(options.sheetWorkerFile, sheetOf(ticket, pictures)),
    createEvaluator: (tell) =>
      createBandedEvaluator((listener) => createEvaluationWorker(options.workerFile, listener), tell),
    createStudyDesk: (tell) =>
      createStudyDesk((listener) => createEvaluationWorker(options.workerFile, listener), tell),
    about: {
      ...{ version: options.version, shell: options.shell, node: process.versions.node },
      ...{ shelfFolder: tickets.shelf.folder, startProblems },
      ...{ startTicket: startTicket.id, startNotes: startTicket.notes },
    },
    report: (subject, error) => console.error(`${subject}:`, error),
  });
  return { program, tickets, problems: startProblems, adopted };
}

const unitsOf = ({ temperatureUnit, lengthUnit }: Settings) => ({ temperature: temperatureUnit, length: lengthUnit });

/** Folders and files that lie beside a built door (dist/main). */
export const besideDoor = (doorFolder: string) => ({
  pagesFolder: join(doorFolder, '../renderer'),
  preloadFile: join(doorFolder, '../preload/preload.cjs'),
  workerFile: join(doorFolder, 'evaluation.worker.js'),
  sheetWorkerFile: join(doorFolder, 'sheet.worker.js'),
  samplesFolder: join(doorFolder, '../../sample-boards'),
});
