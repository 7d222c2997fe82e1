import { succeed } from '../../shared-types/problem.ts';
import { fileStem } from '../files/ticket-names.ts';
import { fitPreheater } from '../heat/preheater-fit.ts';
import type { Phase } from '../workers/worker-messages.ts';
import { type Bench, planProblem, wantedOf } from './bench.ts';
import type { Handlers } from './dispatch.ts';
import type { Services } from './program.ts';

type EvaluationHandlers = Pick<
  Handlers,
  | 'evaluation.run'
  | 'evaluation.cancel'
  | 'evaluation.moment'
  | 'evaluation.curves'
  | 'preheater.fit'
  | 'workMap.render'
  | 'workMap.preview'
>;

const PHASES: Record<'coarse' | 'fine' | 'both', Phase[]> = {
  coarse: ['coarse'],
  fine: ['fine'],
  both: ['coarse', 'fine'],
};

export const evaluationHandlers = (services: Services, bench: Bench): EvaluationHandlers => ({
  'evaluation.run'({ id, phase }) {
    const session = bench.session(id);
    if (!session.ok) return session;
    const problem = planProblem(session.value);
    if (problem) return { ok: false, problem };
    // The window asks for both when no gesture runs: a map of the way there is of no use any more.
    bench.evaluator.want(wantedOf(session.value), PHASES[phase], phase === 'both' ? 'cancel' : 'finish');
    return succeed({});
  },
  'evaluation.cancel'({ id }) {
    bench.evaluator.cancel(id);
    return succeed({});
  },
  'evaluation.moment': ({ id, ...rest }) => bench.evaluator.ask(id, { about: 'moment', ...rest }),
  'evaluation.curves': ({ id, ...rest }) => bench.evaluator.ask(id, { about: 'curves', ...rest }),
  'preheater.fit'({ id, boardReadings }) {
    const session = bench.session(id);
    if (!session.ok) return session;
    const { board, plan } = session.value.document;
    return fitPreheater(board, plan, boardReadings);
  },
  async 'workMap.preview'({ id }) {
    const session = bench.session(id);
    if (!session.ok) return session;
    const problem = planProblem(session.value);
    if (problem) return { ok: false, problem };
    const evaluated = await bench.evaluator.fine(wantedOf(session.value));
    if (!evaluated.ok) return evaluated;
    return succeed({ pages: await services.drawSheetPages(evaluated.value, session.value.pictures) });
  },
  /** Saved before it is printed, so that the sheet never shows what the ticket does not hold. */
  async 'workMap.render'({ id, format }) {
    const session = bench.session(id);
    if (!session.ok) return session;
    const problem = planProblem(session.value);
    if (problem) return { ok: false, problem };
    const saved = await session.value.save();
    if (!saved.ok) return saved;
    const evaluated = await bench.evaluator.fine(wantedOf(session.value));
    if (!evaluated.ok) return evaluated;
    const printed = await services.renderWorkMap(evaluated.value, session.value.pictures, format);
    const stem = fileStem(evaluated.value.document.plan.ticket.number);
    return succeed({ fileName: format === 'pdf' ? `${stem}.pdf` : `${stem}-${format}.zip`, ...printed });
  },
});
