import { expect, test } from 'vitest';
import type { JobEnd, WorkerJob, WorkerListener } from '../../../../main/workers/evaluation-worker-handle.ts';
import { createEvaluator, type EvaluationEvent } from '../../../../main/workers/evaluator.ts';
import type { Assessment } from '../../../../shared-types/evaluation.ts';
import { fail } from '../../../../shared-types/problem.ts';
import { smallTicket } from '../../../support/shell/small-ticket.ts';

/** A worker whose jobs end when the test says so. */
function setUp() {
  const jobs: (WorkerJob & { job: number })[] = [];
  const cancelled: number[] = [];
  const told: string[] = [];
  const asked: number[] = [];
  const clock = { ms: 0 };
  let listener: WorkerListener = { progress: () => undefined, ended: () => undefined };
  const evaluator = createEvaluator(
    (given) => {
      listener = given;
      return {
        run: (job) => jobs.push({ ...job, job: jobs.length + 1 }),
        letShare: () => undefined,
        ask: (question) => {
          asked.push(question.revision);
          return Promise.resolve(fail('not-found'));
        },
        cancel: (job) => void cancelled.push(job),
        close: () => Promise.resolve(),
      };
    },
    (event: EvaluationEvent) => told.push(wordsOf(event)),
    () => clock.ms,
    (_board, _plan, { revision }) => ({ evaluation: { revision, phase: 'again' } }) as unknown as Assessment,
  );
  const last = () => jobs[jobs.length - 1];
  return {
    ...{ evaluator, jobs, cancelled, told, asked, last, clock },
    finish: () => listener.ended({ kind: 'result', job: last().job, assessment: assessmentOf(last()) }),
    fail: (end: Omit<Extract<JobEnd, { kind: 'failed' }>, 'job' | 'kind'>) =>
      listener.ended({ kind: 'failed', job: last().job, ...end }),
    progress: (share: number, job = last().job) => listener.progress(job, share),
    drain: () => told.splice(0),
  };
}

const assessmentOf = ({ revision, phase }: WorkerJob) => ({ evaluation: { revision, phase } }) as unknown as Assessment;
const wordsOf = (event: EvaluationEvent): string => {
  if (event.name === 'evaluation.progress') return `${event.phase} ${event.revision} at ${event.share}`;
  if (event.name === 'evaluation.result') return `${event.phase} ${event.revision} of ${event.id}`;
  return `failed ${event.revision}: ${event.problem.code}`;
};
const ticket = (revision: number, id = 'a') => ({ id, revision, document: smallTicket() });

test('coarse comes first, then fine, with progress in between', () => {
  const { evaluator, finish, progress, told } = setUp();
  evaluator.want(ticket(1), ['coarse', 'fine']);
  progress(0.5);
  finish();
  finish();
  expect(told).toEqual(['coarse 1 at 0', 'coarse 1 at 0.5', 'coarse 1 of a', 'fine 1 at 0', 'fine 1 of a']);
});

test('while dragging, the coarse run that is under way finishes, then the newest document is taken', () => {
  const { evaluator, finish, told, jobs, cancelled } = setUp();
  for (let revision = 1; revision <= 5; revision++) evaluator.want(ticket(revision), ['coarse', 'fine']);
  finish();
  expect(told.filter((words) => words.includes('of a'))).toEqual(['coarse 1 of a']);
  expect(jobs.map(({ revision, phase }) => `${phase} ${revision}`)).toEqual(['coarse 1', 'coarse 5']);
  expect(cancelled).toEqual([]);
});

test('once the gesture is over, a coarse run of the way there is cancelled at once, silently', () => {
  const { evaluator, fail, told, jobs, cancelled, drain } = setUp();
  evaluator.want(ticket(1), ['coarse']);
  evaluator.want(ticket(2), ['coarse']);
  evaluator.want(ticket(3), ['coarse', 'fine']);
  expect(cancelled, 'as long as it moves, the run under way goes on').toEqual([]);
  evaluator.want(ticket(3), ['coarse', 'fine'], 'cancel');
  expect(cancelled).toEqual([1]);
  drain();
  fail({ problem: { code: 'cancelled' } });
  expect(jobs.map(({ revision, phase }) => `${phase} ${revision}`)).toEqual(['coarse 1', 'coarse 3']);
  expect(told).toEqual(['coarse 3 at 0']);
});

test('once the gesture is over, the coarse run of its last revision goes on', () => {
  const { evaluator, finish, told, jobs, cancelled } = setUp();
  evaluator.want(ticket(1), ['coarse']);
  evaluator.want(ticket(1), ['coarse', 'fine'], 'cancel');
  finish();
  expect(cancelled).toEqual([]);
  expect(told).toEqual(['coarse 1 at 0', 'coarse 1 of a', 'fine 1 at 0']);
  expect(jobs.map(({ phase }) => phase)).toEqual(['coarse', 'fine']);
});

/**
 * A key held down: an edit every 33 ms for two seconds, each asking for both maps with no gesture running; a worker whose
 * coarse runs take `runMs` and end at once when cancelled. Tells when maps came, and of which revision.
 */
function heldKey(runMs: number) {
  const { evaluator, clock, cancelled, jobs, last, finish, fail, told, drain } = setUp();
  const maps: { ms: number; revision: number; wanted: number }[] = [];
  let begunAt = 0;
  let begun = 0;
  let wanted = 0;
  for (clock.ms = 0; clock.ms < 2000; clock.ms++) {
    if (clock.ms % 33 === 0) evaluator.want(ticket(++wanted), ['coarse', 'fine'], 'cancel');
    if (cancelled.includes(last().job)) fail({ problem: { code: 'cancelled' } });
    if (jobs.length !== begun) begunAt = clock.ms;
    begun = jobs.length;
    if (last().phase !== 'coarse' || clock.ms - begunAt < runMs) continue;
    drain();
    finish();
    const map = /^coarse (\d+) of a$/.exec(told[0] ?? '');
    if (map) maps.push({ ms: clock.ms, revision: Number(map[1]), wanted });
  }
  return maps;
}

test.each([20, 120, 290])('a key held down shows a map at least every 500 ms: runs of %i ms', (runMs) => {
  const maps = heldKey(runMs);
  const times = [0, ...maps.map(({ ms }) => ms), 2000];
  for (let index = 1; index < times.length; index++) expect(times[index] - times[index - 1]).toBeLessThanOrEqual(500);
  // Never back to an older document, and never further behind than a run takes.
  const revisions = maps.map(({ revision }) => revision);
  expect(revisions).toEqual([...revisions].sort((a, b) => a - b));
  for (const { revision, wanted } of maps) expect(wanted - revision).toBeLessThanOrEqual(Math.ceil(runMs / 33));
});

test('a fine run is cancelled by the next revision, silently', () => {
  const { evaluator, finish, fail, told, jobs, cancelled, drain } = setUp();
  evaluator.want(ticket(1), ['coarse', 'fine']);
  finish();
  evaluator.want(ticket(2), ['coarse', 'fine']);
  expect(cancelled).toEqual([2]);
  drain();
  fail({ problem: { code: 'cancelled' } });
  expect(jobs.map(({ revision, phase }) => `${phase} ${revision}`)).toEqual(['coarse 1', 'fine 1', 'coarse 2']);
  expect(told).toEqual(['coarse 2 at 0']);
});

test('a user cancels: both phases end, and it is told once', () => {
  const { evaluator, fail, told, jobs, progress } = setUp();
  evaluator.want(ticket(1), ['coarse', 'fine']);
  evaluator.cancel('a');
  progress(0.4);
  fail({ problem: { code: 'cancelled' } });
  expect(told).toEqual(['coarse 1 at 0', 'failed 1: cancelled']);
  expect(jobs).toHaveLength(1);
  evaluator.want(ticket(2), ['coarse', 'fine']);
  expect(jobs).toHaveLength(2);
});

test('a result that was already under way when the user cancelled is not shown', () => {
  const { evaluator, finish, told } = setUp();
  evaluator.want(ticket(1), ['coarse', 'fine']);
  evaluator.cancel('a');
  finish();
  expect(told).toEqual(['coarse 1 at 0', 'failed 1: cancelled']);
});

test('a problem ends the revision; the next revision is tried anew', () => {
  const { evaluator, fail, told, jobs } = setUp();
  evaluator.want(ticket(1), ['coarse', 'fine']);
  fail({ problem: { code: 'evaluation-failed' } });
  expect(told).toEqual(['coarse 1 at 0', 'failed 1: evaluation-failed']);
  evaluator.want(ticket(2), ['coarse', 'fine']);
  expect(jobs).toHaveLength(2);
});

test('asking again for what is under way or known computes nothing twice', () => {
  const { evaluator, finish, told, jobs, drain } = setUp();
  const one = ticket(1);
  evaluator.want(one, ['coarse', 'fine']);
  evaluator.want(one, ['coarse', 'fine']);
  finish();
  evaluator.want(one, ['coarse', 'fine']);
  finish();
  expect(jobs.map(({ phase }) => phase)).toEqual(['coarse', 'fine']);
  drain();
  evaluator.want(one, ['coarse', 'fine']);
  expect(jobs).toHaveLength(2);
  expect(told).toEqual(['fine 1 of a']);
});

test('coarse alone is asked for during a gesture: no fine run follows', () => {
  const { evaluator, finish, jobs } = setUp();
  evaluator.want(ticket(1), ['coarse', 'fine']);
  evaluator.want(ticket(1), ['coarse']);
  finish();
  expect(jobs.map(({ phase }) => phase)).toEqual(['coarse']);
});

test('another ticket puts the first one away', () => {
  const { evaluator, fail, told, jobs } = setUp();
  evaluator.want(ticket(1), ['coarse', 'fine']);
  evaluator.want(ticket(1, 'b'), ['coarse', 'fine']);
  fail({ problem: { code: 'cancelled' } });
  expect(jobs).toHaveLength(2);
  expect(told).toEqual(['coarse 1 at 0', 'coarse 1 at 0']);
});

test('a plan that lost its runs is forgotten without a word', () => {
  const { evaluator, finish, told, jobs } = setUp();
  evaluator.want(ticket(1), ['coarse', 'fine']);
  evaluator.forget('a');
  finish();
  expect(told).toEqual(['coarse 1 at 0']);
  expect(jobs).toHaveLength(1);
});

test('the sheet gets the fine answer that is known, under way, or made for it', async () => {
  const { evaluator, finish, jobs } = setUp();
  evaluator.want(ticket(1), ['coarse', 'fine']);
  const coming = evaluator.fine(ticket(1));
  finish();
  finish();
  expect(await coming).toMatchObject({
    ok: true,
    value: { assessment: { evaluation: { revision: 1, phase: 'fine' } } },
  });
  expect(await evaluator.fine(ticket(1))).toMatchObject({ ok: true });
  expect(jobs).toHaveLength(2);
  const made = evaluator.fine(ticket(2));
  expect(jobs.map(({ phase }) => phase)).toEqual(['coarse', 'fine', 'fine']);
  finish();
  expect(await made).toMatchObject({ ok: true, value: { assessment: { evaluation: { revision: 2 } } } });
});

test('an edit while the sheet waits: the sheet is made of the newer document', async () => {
  const { evaluator, finish, fail } = setUp();
  const sheet = evaluator.fine(ticket(1));
  evaluator.want(ticket(2), ['coarse', 'fine']);
  fail({ problem: { code: 'cancelled' } });
  finish();
  finish();
  expect(await sheet).toMatchObject({ ok: true, value: { assessment: { evaluation: { revision: 2 } } } });
});

test('a sheet that cannot come is answered with the reason', async () => {
  const { evaluator, fail } = setUp();
  const sheet = evaluator.fine(ticket(1));
  fail({ problem: { code: 'evaluation-failed' } });
  expect(await sheet).toEqual({ ok: false, problem: { code: 'evaluation-failed' } });
  const another = evaluator.fine(ticket(2));
  evaluator.cancel('a');
  fail({ problem: { code: 'cancelled' } });
  expect(await another).toEqual({ ok: false, problem: { code: 'cancelled' } });
  const last = evaluator.fine(ticket(3));
  await evaluator.close();
  expect(await last).toEqual({ ok: false, problem: { code: 'cancelled' } });
});

test('moments are asked of the newest fine evaluation only, and not while another one is made', async () => {
  const { evaluator, finish, asked } = setUp();
  const about = (revision: number, id = 'a') =>
    evaluator
      .ask(id, { about: 'moment', revision, runId: 'run-1', atS: 10 })
      .then((answer) => answer.ok || answer.problem.code);
  evaluator.want(ticket(1), ['coarse', 'fine']);
  finish();
  expect(await about(1), 'the fine run is under way').toBe('stale-evaluation');
  finish();
  await about(1);
  expect(await about(0)).toBe('stale-evaluation');
  expect(await about(1, 'b'), 'another ticket').toBe('stale-evaluation');
  evaluator.want(ticket(2), ['coarse', 'fine']);
  await about(1);
  finish();
  expect(await about(1), 'its frames have been let go').toBe('stale-evaluation');
  expect(asked).toEqual([1, 1]);
});

/** A step ticked: nothing that the heat depends on. */
const ticked = ({ document }: ReturnType<typeof ticket>, revision: number) => ({
  id: 'a',
  revision,
  document: { ...document, plan: { ...document.plan, steps: { ...document.plan.steps, own: [] } } },
});

test('an edit that no heat depends on keeps the fine map: only what it means is told anew', async () => {
  const { evaluator, finish, told, jobs, asked, drain } = setUp();
  const first = ticket(1);
  evaluator.want(first, ['fine']);
  finish();
  drain();
  evaluator.want(ticked(first, 2), ['coarse', 'fine']);
  expect(told).toEqual(['fine 2 of a']);
  expect(jobs).toHaveLength(1);
  const printed = await evaluator.fine(ticked(first, 3));
  expect(printed.ok && printed.value.assessment).toEqual({ evaluation: { revision: 3, phase: 'again' } });
  expect(jobs).toHaveLength(1);
  await evaluator.ask('a', { about: 'moment', revision: 3, runId: 'r', atS: 1 });
  expect(asked, 'the worker knows the run by the revision that it was made for').toEqual([1]);
});

test('an edit of the heat that is undone ends the run that it began', () => {
  const { evaluator, finish, told, jobs, cancelled } = setUp();
  const first = ticket(1);
  evaluator.want(first, ['fine']);
  finish();
  evaluator.want(ticket(2), ['fine']);
  evaluator.want(ticked(first, 3), ['coarse', 'fine']);
  expect(cancelled).toEqual([jobs[1].job]);
  expect(told.at(-1)).toBe('fine 3 of a');
});
