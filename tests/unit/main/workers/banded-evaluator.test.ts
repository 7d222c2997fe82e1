import { expect, test } from 'vitest';
import { bandRunsOf } from '../../../../main/planning/band-numbers.ts';
import { createBandedEvaluator } from '../../../../main/workers/banded-evaluator.ts';
import type { WorkerJob, WorkerListener } from '../../../../main/workers/evaluation-worker-handle.ts';
import type { EvaluationEvent } from '../../../../main/workers/evaluator.ts';
import type { Assessment } from '../../../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../../../shared-types/plan.ts';
import { fail } from '../../../../shared-types/problem.ts';
import { smallTicket } from '../../../support/shell/small-ticket.ts';
import { evaluated } from '../heat/support.ts';

const document = smallTicket();
const made = bandRunsOf(document.board, document.plan);
if (!made.ok) throw new Error(made.problem.code);
const runs = made.value;
const evaluation = evaluated(document.board, document.plan);
const assessment = { evaluation, actions: [], findings: [], runNumbers: [], cautions: [] } satisfies Assessment;

type Job = WorkerJob & { job: number; cancelled: boolean };

/** Two workers whose jobs end when the test says so: the first makes maps, the second bands. */
function setUp() {
  const listeners: WorkerListener[] = [];
  const jobs: Job[] = [];
  const told: string[] = [];
  const timers: (() => void)[] = [];
  const shares: boolean[] = [];
  const evaluator = createBandedEvaluator(
    (listener) => {
      listeners.push(listener);
      return {
        run: (job) => jobs.push({ ...job, job: jobs.length + 1, cancelled: false }),
        cancel: (job) => {
          for (const one of jobs) if (one.job === job) one.cancelled = true;
        },
        letShare: (isFree) => void shares.push(isFree),
        ask: () => Promise.resolve(fail('stale-evaluation')),
        close: () => Promise.resolve(),
      };
    },
    (event: EvaluationEvent) => {
      if (event.name === 'evaluation.progress') told.push(`${event.phase} ${event.revision} at ${event.share}`);
      else if (event.name === 'evaluation.failed') told.push(`failed ${event.revision}: ${event.problem.code}`);
      else told.push(`${event.phase} ${event.revision} ${event.assessment.evaluation.bands}`);
    },
    (_, act) => {
      timers.push(act);
      return () => void timers.splice(timers.indexOf(act), 1);
    },
  );
  const last = (phase: string) => jobs.findLast((job) => job.phase === phase)!;
  return {
    ...{ evaluator, jobs, told, timers, shares, last },
    bandsOf: () => jobs.filter((job) => job.phase === 'bands'),
    map: (phase: 'coarse' | 'fine') =>
      listeners.find((_, index) => index !== 0)!.ended({ kind: 'result', job: last(phase).job, assessment }),
    bands: () => listeners[0]!.ended({ kind: 'bands', job: last('bands').job, runs }),
    bandsFail: (code: 'cancelled' | 'evaluation-failed') =>
      listeners[0]!.ended({ kind: 'failed', job: last('bands').job, problem: { code } }),
    bandsProgress: (share: number) => listeners[0]!.progress(last('bands').job, share),
  };
}
const ticket = (revision: number, of: TicketDocument = document) => ({ id: 'a', revision, document: of });
const changed = (): TicketDocument => ({ ...document, plan: { ...document.plan, tags: [...document.plan.tags] } });

test('band runs share a second core only while no map is made on it', () => {
  const bench = setUp();
  bench.evaluator.want(ticket(1), ['coarse', 'fine']);
  bench.map('coarse');
  bench.timers[0]!();
  expect(bench.shares).toEqual([false]);
  bench.map('fine');
  expect(bench.shares).toEqual([false, true]);
  bench.evaluator.want(ticket(2, changed()), ['coarse', 'fine']);
  expect(bench.shares).toEqual([false, true, false]);
});

test('the fine map comes without bands and is told again with them', () => {
  const bench = setUp();
  bench.evaluator.want(ticket(1), ['coarse', 'fine']);
  bench.map('coarse');
  expect(bench.bandsOf(), 'not before the gesture has had time to go on').toHaveLength(0);
  bench.timers[0]!();
  expect(bench.bandsOf()).toHaveLength(1);
  bench.bandsProgress(0.3);
  bench.map('fine');
  bench.bandsProgress(0.6);
  bench.bands();
  expect(bench.told.filter((words) => !words.startsWith('coarse 1 at'))).toEqual([
    'coarse 1 not-computed',
    'fine 1 at 0',
    'fine 1 not-computed',
    'bands 1 at 0.6',
    'fine 1 computed',
  ]);
});

test('bands that are there first come with the fine map', () => {
  const bench = setUp();
  bench.evaluator.want(ticket(1), ['coarse', 'fine']);
  bench.map('coarse');
  bench.timers[0]!();
  bench.bands();
  bench.map('fine');
  expect(bench.told.slice(-2)).toEqual(['coarse 1 computed', 'fine 1 computed']);
});

test('a newer revision ends the bands; theirs never reach its map', () => {
  const bench = setUp();
  bench.evaluator.want(ticket(1), ['coarse', 'fine']);
  bench.map('coarse');
  bench.map('fine');
  expect(bench.bandsOf()).toHaveLength(1);
  bench.evaluator.want(ticket(2, changed()), ['coarse', 'fine']);
  expect(bench.last('bands').cancelled).toBe(true);
  bench.bands();
  bench.map('coarse');
  bench.map('fine');
  expect(bench.told.filter((words) => words.includes(' 2 ') && words.endsWith('computed'))).toEqual([
    'coarse 2 not-computed',
    'fine 2 not-computed',
  ]);
  expect(bench.bandsOf(), 'and its own are begun').toHaveLength(2);
});

test('names and notes make no new bands', () => {
  const bench = setUp();
  bench.evaluator.want(ticket(1), ['coarse', 'fine']);
  bench.map('coarse');
  bench.map('fine');
  bench.bands();
  const renamed = { ...document, plan: { ...document.plan, ticket: { ...document.plan.ticket, notes: 'seen' } } };
  bench.evaluator.want(ticket(2, renamed), ['coarse', 'fine']);
  bench.map('coarse');
  bench.map('fine');
  expect(bench.told.at(-1)).toBe('fine 2 computed');
  expect(bench.bandsOf()).toHaveLength(1);
});

test('who prints waits for the bands, and prints without them where they fail', async () => {
  const bench = setUp();
  const first = bench.evaluator.fine(ticket(1));
  bench.map('fine');
  await Promise.resolve();
  bench.bandsFail('evaluation-failed');
  const without = await first;
  expect(without.ok && without.value.assessment.evaluation.bands).toBe('not-computed');
  expect(bench.told.at(-1)).toBe('failed 1: evaluation-failed');
  const again = bench.evaluator.fine(ticket(1));
  await Promise.resolve();
  await Promise.resolve();
  bench.bands();
  const whole = await again;
  expect(whole.ok && whole.value.assessment.evaluation.bands).toBe('computed');
});

test('a user stops the bands alone: told once', () => {
  const bench = setUp();
  bench.evaluator.want(ticket(1), ['coarse', 'fine']);
  bench.map('coarse');
  bench.map('fine');
  bench.evaluator.cancel('a');
  expect(bench.last('bands').cancelled).toBe(true);
  bench.bandsFail('cancelled');
  expect(bench.told.filter((words) => words.startsWith('failed'))).toEqual(['failed 1: cancelled']);
});
