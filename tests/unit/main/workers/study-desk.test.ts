import { expect, test } from 'vitest';
import type { WorkerJob, WorkerListener } from '../../../../main/workers/evaluation-worker-handle.ts';
import { createStudyDesk } from '../../../../main/workers/study-desk.ts';
import type { StudyOrder } from '../../../../main/workers/worker-messages.ts';
import { fail } from '../../../../shared-types/problem.ts';
import type { CalibrationAnswer, FitProgress } from '../../../../shared-types/study.ts';
import { smallTicket } from '../../../support/shell/small-ticket.ts';

const order: StudyOrder = { about: 'calibration', order: { runId: 'run-1', logName: 'log.csv', points: [] } };
const answer = (readings: number) => ({ calibration: { readings } }) as CalibrationAnswer;
const ticket = (id: string) => ({ id, revision: 1, document: smallTicket() });

/** A desk whose worker ends its jobs when the test says so. */
function setUp() {
  const jobs: (WorkerJob & { cancelled: boolean })[] = [];
  const told: string[] = [];
  let worker!: WorkerListener;
  const desk = createStudyDesk(
    (listener) => {
      worker = listener;
      return {
        run: (job) => jobs.push({ ...job, cancelled: false }),
        cancel: (job) => {
          jobs[job - 1]!.cancelled = true;
        },
        letShare: () => undefined,
        ask: () => Promise.resolve(fail('stale-evaluation')),
        close: () => Promise.resolve(),
      };
    },
    ({ id, share, fit }) => told.push(`${id} ${share}${fit ? ` round ${fit.round}` : ''}`),
  );
  return {
    ...{ desk, jobs, told },
    progress: (job: number, share: number, fit?: FitProgress) => worker.progress(job, share, fit),
    done: (job: number, readings: number) => worker.ended({ kind: 'study', job, answer: answer(readings) }),
    failed: (job: number, code: 'cancelled' | 'evaluation-failed') =>
      worker.ended({ kind: 'failed', job, problem: { code } }),
  };
}

test('progress of the work and its answer come back to who asked', async () => {
  const { desk, told, progress, done } = setUp();
  const asked = desk.run(ticket('a'), order);
  progress(1, 0.4);
  progress(1, 0.5, { round: 2, leftK: 1.3 });
  done(1, 7);
  expect(await asked).toEqual({ ok: true, value: answer(7) });
  expect(told).toEqual(['a 0.4', 'a 0.5 round 2']);
});

test('a cancel is answered at once and ends the job; what the job still says reaches nobody', async () => {
  const { desk, jobs, failed, done } = setUp();
  const first = desk.run(ticket('a'), order);
  desk.cancel('b');
  expect(jobs[0]!.cancelled, 'another ticket').toBe(false);
  desk.cancel('a');
  expect(await first).toMatchObject({ problem: { code: 'cancelled' } });
  expect(jobs[0]!.cancelled).toBe(true);
  const second = desk.run(ticket('a'), order);
  expect(jobs, 'the first job is not over yet').toHaveLength(1);
  failed(1, 'cancelled');
  expect(jobs).toHaveLength(2);
  done(2, 9);
  expect(await second).toEqual({ ok: true, value: answer(9) });
});

test('newer work overtakes older work, also work that waits', async () => {
  const { desk, failed, done } = setUp();
  const asked = [1, 2, 3].map(() => desk.run(ticket('a'), order));
  failed(1, 'cancelled');
  done(2, 3);
  expect((await Promise.all(asked)).map((one) => (one.ok ? 'done' : one.problem.code))).toEqual([
    ...['cancelled', 'cancelled', 'done'],
  ]);
});

test('work that fails says why', async () => {
  const { desk, failed } = setUp();
  const asked = desk.run(ticket('a'), order);
  failed(1, 'evaluation-failed');
  expect(await asked).toMatchObject({ problem: { code: 'evaluation-failed' } });
});
