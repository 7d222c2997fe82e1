import type { MainEvent, RequestOutput } from '../../shared-types/contract.ts';
import type { Problem } from '../../shared-types/problem.ts';
import type { SheetFormat } from '../../shared-types/sheet-format.ts';
import type { Samples } from '../files/samples.ts';
import type { Pictures } from '../files/ticket-photos.ts';
import type { Tickets } from '../files/tickets.ts';
import type { SettingsStore } from '../settings/settings-store.ts';
import type { EvaluatedTicket, EvaluationEvent, Evaluator } from '../workers/evaluator.ts';
import type { StudyDesk, StudyEvent } from '../workers/study-desk.ts';
import { type Bench, createBench } from './bench.ts';
import { createDispatch, type Dispatch } from './dispatch.ts';
import { createHandlers } from './handlers.ts';

/** A rendered work map: a PDF, or a ZIP of its pages. */
export type PrintedWorkMap = { bytes: Uint8Array<ArrayBuffer>; pages: number };

/** What the handlers stand on; the doors put it together. */
export type Services = {
  tickets: Tickets;
  samples: Samples;
  settings: SettingsStore;
  renderWorkMap(ticket: EvaluatedTicket, pictures: Pictures, format: SheetFormat): Promise<PrintedWorkMap>;
  /** Its pages as SVG text in UTF-8. */
  drawSheetPages(ticket: EvaluatedTicket, pictures: Pictures): Promise<Uint8Array<ArrayBuffer>[]>;
  createEvaluator(tell: (event: EvaluationEvent) => void): Evaluator;
  createStudyDesk(tell: (event: StudyEvent) => void): StudyDesk;
  about: RequestOutput<'about.read'>;
  /** Errors that nobody foresaw, for the log. */
  report(subject: string, error: unknown): void;
};

/** One window's way into the program. Tickets and evaluations belong to the connection; when it goes, they are saved and let go. */
export type Connection = { dispatch: Dispatch; close(): Promise<Problem[]> };
export type Program = { connect(tell: (event: MainEvent) => void): Connection; close(): Promise<Problem[]> };

export function createProgram(services: Services): Program {
  const benches = new Set<Bench>();
  return {
    connect(tell) {
      const bench = createBench(services, tell);
      benches.add(bench);
      return {
        dispatch: createDispatch(createHandlers(services, bench), services.report),
        close() {
          benches.delete(bench);
          return bench.close();
        },
      };
    },
    async close() {
      await Promise.all([...benches].map((bench) => bench.close()));
      benches.clear();
      return services.tickets.closeAll();
    },
  };
}
