import type { MainEvent, OpenedTicket } from '../../shared-types/contract.ts';
import { fail, type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import type { TicketSession } from '../files/session-types.ts';
import { type OpenSession, openedTicket } from '../files/tickets.ts';
import type { Evaluator, WantedEvaluation } from '../workers/evaluator.ts';
import type { StudyDesk } from '../workers/study-desk.ts';
import type { Services } from './program.ts';

/** The open tickets of one window, and the evaluation that follows them. */
export type Bench = {
  readonly evaluator: Evaluator;
  /** Long work on the open tickets: one at a time. */
  readonly studies: StudyDesk;
  session(id: string): Result<TicketSession>;
  /** Puts an opened ticket on the bench; its evaluation starts. */
  take(opened: Result<OpenSession>): Result<OpenedTicket>;
  /** The ticket is open already on this bench, or null. One that went on as another file after a conflict is put away first. */
  present(id: string): Promise<OpenedTicket | null>;
  changed(session: TicketSession): void;
  /** Brings every open ticket to its file, so that a file that comes in is compared with what the bench really holds. */
  saveAll(): Promise<void>;
  /** Saves and takes off the bench. On a problem the ticket stays. */
  put(id: string): Promise<Problem | null>;
  close(): Promise<Problem[]>;
};

export function createBench(services: Services, tell: (event: MainEvent) => void): Bench {
  const evaluator = services.createEvaluator(tell);
  const studies = services.createStudyDesk(tell);
  const sessions = new Map<string, TicketSession>();
  const changed = (session: TicketSession) => {
    if (planProblem(session)) evaluator.forget(session.id);
    else evaluator.want(wantedOf(session), ['coarse', 'fine']);
  };
  const put = async (id: string): Promise<Problem | null> => {
    const session = sessions.get(id);
    if (!session) return null;
    const saved = await session.save();
    if (!saved.ok) return saved.problem;
    sessions.delete(id);
    evaluator.forget(id);
    studies.cancel(id);
    return services.tickets.release(session);
  };
  return {
    evaluator,
    studies,
    session(id) {
      const session = sessions.get(id);
      return session ? succeed(session) : fail('not-found');
    },
    take(opened) {
      if (!opened.ok) return opened;
      const { session, problems } = opened.value;
      const before = sessions.get(session.id);
      if (before && before !== session) void services.tickets.release(before);
      sessions.set(session.id, session);
      session.tell(tell);
      changed(session);
      for (const problem of problems) tell({ name: 'ticket.problem', id: session.id, problem });
      return succeed(openedTicket(opened.value));
    },
    async present(id) {
      const moved = [...sessions.values()].filter((one) => services.tickets.shelf.register(one.path) !== one.id);
      for (const one of moved) await put(one.id);
      const session = sessions.get(id);
      return session ? openedTicket({ session, recovered: false, problems: [] }) : null;
    },
    changed,
    async saveAll() {
      for (const session of sessions.values()) await session.save();
    },
    put,
    async close() {
      const open = [...sessions.values()];
      sessions.clear();
      await evaluator.close();
      await studies.close();
      for (const session of open) session.tell(() => undefined);
      const left = await Promise.all(open.map((session) => services.tickets.release(session)));
      return left.filter((problem) => problem !== null);
    },
  };
}

/** What keeps a plan from being evaluated, or null. */
export function planProblem({ document }: TicketSession): Problem | null {
  if (document.plan.sites.length === 0) return { code: 'no-site' };
  return document.plan.heatRuns.length === 0 ? { code: 'no-heat-run' } : null;
}

export const wantedOf = ({ id, revision, document }: TicketSession): WantedEvaluation => ({ id, revision, document });
