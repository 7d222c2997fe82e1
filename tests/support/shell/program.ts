import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createProgram, type Program, type Services } from '../../../main/contract/program.ts';
import { packTicket } from '../../../main/document/ticket-archive.ts';
import { type FileSystem, nodeFileSystem } from '../../../main/files/file-system.ts';
import { createSamples } from '../../../main/files/samples.ts';
import { createTickets, type Tickets } from '../../../main/files/tickets.ts';
import { openSettings } from '../../../main/settings/open-settings.ts';
import { createBandedEvaluator } from '../../../main/workers/banded-evaluator.ts';
import { createEvaluationWorker } from '../../../main/workers/evaluation-worker-handle.ts';
import type { Evaluator } from '../../../main/workers/evaluator.ts';
import { createStudyDesk } from '../../../main/workers/study-desk.ts';
import type { MainEvent } from '../../../shared-types/contract.ts';
import { fail } from '../../../shared-types/problem.ts';
import { smallTicket } from './small-ticket.ts';

export type TestProgram = { program: Program; tickets: Tickets };
export type TestProgramOptions = {
  folder: string;
  fs?: FileSystem;
  /** The built worker; without it nothing is evaluated. */
  workerFile?: string;
  now?: () => Date;
  pauses?: Parameters<typeof createTickets>[0]['pauses'];
  renderWorkMap?: Services['renderWorkMap'];
  drawSheetPages?: Services['drawSheetPages'];
};

/** A whole program below one folder: shelf, app folder, one sample. */
export async function testProgram(options: TestProgramOptions): Promise<TestProgram> {
  const { folder, fs = nodeFileSystem, workerFile } = options;
  const samplesFolder = join(folder, 'samples');
  mkdirSync(samplesFolder, { recursive: true });
  const bytes = packTicket({ document: smallTicket('S-1'), photos: new Map() });
  writeFileSync(join(samplesFolder, 'small.hmticket'), bytes);
  const tickets = createTickets({
    ...{ fs, shelfFolder: join(folder, 'shelf'), appFolder: join(folder, 'app') },
    ...{ now: options.now, pauses: options.pauses },
  });
  const program = createProgram({
    tickets,
    settings: (await openSettings('local', join(folder, 'app'))).settings,
    samples: createSamples(fs, samplesFolder),
    renderWorkMap: options.renderWorkMap ?? notHere,
    drawSheetPages: options.drawSheetPages ?? notHere,
    createEvaluator: (tell) =>
      workerFile
        ? createBandedEvaluator((listener) => createEvaluationWorker(workerFile, listener), tell)
        : restingEvaluator(),
    createStudyDesk: (tell) => createStudyDesk((listener) => createEvaluationWorker(workerFile ?? '', listener), tell),
    about: {
      ...{ version: '0.0.0', shell: 'local', node: '20', shelfFolder: 'shelf' },
      ...{ startTicket: null, startNotes: [], startProblems: [] },
    },
    report: (subject, error) => console.error(subject, error),
  });
  return { program, tickets };
}

const notHere = () => Promise.reject(new Error('not part of this test'));

/** For tests of everything but heat. */
const restingEvaluator = (): Evaluator => ({
  ...{ want: () => undefined, cancel: () => undefined, forget: () => undefined },
  ask: () => Promise.resolve(fail('stale-evaluation')),
  ...{ fine: () => Promise.reject(new Error('not part of this test')), close: () => Promise.resolve() },
});

/** Collects events and waits for one. */
export function eventLog() {
  const events: MainEvent[] = [];
  const waiting = new Set<() => void>();
  return {
    events,
    hear(event: MainEvent) {
      events.push(event);
      for (const look of waiting) look();
    },
    /** The first event, old or new, that passes; fails after the time given. */
    find<E extends MainEvent>(passes: (event: MainEvent) => event is E, withinMs = 20_000): Promise<E> {
      return new Promise((resolve, reject) => {
        const timer = setTimeout(() => {
          waiting.delete(look);
          reject(new Error(`no such event among ${events.map((event) => event.name).join(', ')}`));
        }, withinMs);
        const look = () => {
          const found = events.find(passes);
          if (!found) return;
          clearTimeout(timer);
          waiting.delete(look);
          resolve(found);
        };
        waiting.add(look);
        look();
      });
    },
  };
}
