import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { evaluate } from '../../main/heat/evaluate.ts';
import { assess } from '../../main/planning/assess.ts';
import { createBandedEvaluator } from '../../main/workers/banded-evaluator.ts';
import {
  createEvaluationWorker,
  type EvaluationWorker,
  type JobEnd,
} from '../../main/workers/evaluation-worker-handle.ts';
import type { EvaluationEvent } from '../../main/workers/evaluator.ts';
import { builtPart } from '../support/shell/build-main.ts';
import { temporaryFolder } from '../support/shell/folders.ts';
import { smallTicket } from '../support/shell/small-ticket.ts';

const mainFolder = builtPart('main');
const builtWorker = () => join(mainFolder(), 'evaluation.worker.js');

function start(file: string) {
  const ends: JobEnd[] = [];
  const shares: number[] = [];
  let heard: () => void = () => undefined;
  const worker: EvaluationWorker = createEvaluationWorker(file, {
    progress: (_job, share) => shares.push(share),
    ended: (end) => {
      ends.push(end);
      heard();
    },
  });
  onTestFinished(() => worker.close());
  const next = () =>
    new Promise<JobEnd>((resolve) => {
      heard = () => resolve(ends[ends.length - 1]);
    });
  return { worker, ends, shares, next };
}

const reasonOf = (end: JobEnd) => (end.kind === 'failed' ? end.problem : null);

test('the built worker gives the same answer as the code it was built from', async () => {
  const { worker, next } = start(builtWorker());
  const document = smallTicket();
  const ended = next();
  worker.run({ revision: 4, phase: 'coarse', document });
  const end = await ended;
  const evaluation = evaluate(document.board, document.plan, { phase: 'coarse', revision: 4 });
  if (!evaluation.ok) throw new Error(evaluation.problem.code);
  expect(end.kind === 'result' && end.assessment).toEqual(assess(document.board, document.plan, evaluation.value));
});

test('the board is sent once; the plan that changes is what the next answer is about', async () => {
  const { worker, next } = start(builtWorker());
  const document = smallTicket();
  const first = next();
  worker.run({ revision: 1, phase: 'coarse', document });
  await first;
  const cooler = {
    ...document,
    plan: { ...document.plan, heatRuns: document.plan.heatRuns.slice(0, 1) },
  };
  const second = next();
  worker.run({ revision: 2, phase: 'coarse', document: cooler });
  const end = await second;
  expect(end.kind === 'result' && end.assessment.evaluation.runs).toHaveLength(1);
});

test('a cancelled run ends soon, with that word, and the worker goes on', async () => {
  const { worker, next, shares } = start(builtWorker());
  const document = smallTicket();
  const long = {
    ...document,
    plan: {
      ...document.plan,
      heatRuns: document.plan.heatRuns.map((run) => ({
        ...run,
        segments: run.segments.map((segment) => ({ ...segment, seconds: 7200 })),
      })),
    },
  };
  const cancelled = next();
  const job = worker.run({ revision: 1, phase: 'fine', document: long });
  await expect.poll(() => shares.length, { timeout: 10_000 }).toBeGreaterThan(0);
  const asked = performance.now();
  worker.cancel(job);
  expect(reasonOf(await cancelled)).toMatchObject({ code: 'cancelled' });
  expect(performance.now() - asked).toBeLessThan(1000);
  const after = next();
  worker.run({ revision: 2, phase: 'coarse', document });
  expect((await after).kind).toBe('result');
});

test('a worker that dies at work ends its job with a problem that names its file, and is born again', async () => {
  const folder = temporaryFolder();
  const file = join(folder, 'weak.worker.mjs');
  writeFileSync(
    file,
    `import { parentPort } from 'node:worker_threads';
parentPort.on('message', (message) => {
  if (message.revision === 1) process.exit(3);
  if (message.revision === 2) throw new Error('out of breath');
  parentPort.postMessage({ kind: 'failed', job: message.job, problem: { code: 'no-site', where: message.board ? 'whole' : 'no board' } });
});
parentPort.postMessage({ kind: 'ready' });
`,
  );
  const { worker, next } = start(file);
  const document = smallTicket();
  const ask = (revision: number) => {
    const ended = next();
    worker.run({ revision, phase: 'coarse', document });
    return ended.then(reasonOf);
  };
  // Before each death an answer: what died before it was heard of would be a worker that does not start.
  for (const deadly of [1, 2]) {
    // Each new worker is given the board again, though it is the one of the job before.
    expect(await ask(3)).toEqual({ code: 'no-site', where: 'whole' });
    const problem = await ask(deadly);
    expect(problem?.code).toBe('evaluation-failed');
    expect(problem?.detail?.reason).toMatch(/weak\.worker\.mjs stopped/);
  }
  expect(await ask(3)).toEqual({ code: 'no-site', where: 'whole' });
});

test('a worker that dies while it computes: the window is told, and the next edit gets its map from a new one', async () => {
  const folder = temporaryFolder();
  const file = join(folder, 'mortal.worker.mjs');
  // The real worker, whose first life ends in the middle of its steps: there it looks at the clock for its progress.
  writeFileSync(
    file,
    `import { existsSync, writeFileSync } from 'node:fs';
const lived = ${JSON.stringify(join(folder, 'lived'))};
let looks = existsSync(lived) ? Number.NEGATIVE_INFINITY : 0;
writeFileSync(lived, '');
const now = performance.now.bind(performance);
performance.now = () => { if (++looks > 8) process.exit(3); return now(); };
await import(${JSON.stringify(pathToFileURL(builtWorker()).href)});
`,
  );
  const events: EvaluationEvent[] = [];
  const evaluator = createBandedEvaluator(
    (listener) => createEvaluationWorker(file, listener),
    (event) => events.push(event),
  );
  onTestFinished(() => evaluator.close());
  const document = smallTicket();
  evaluator.want({ id: 'a', revision: 1, document }, ['coarse']);
  const told = (name: EvaluationEvent['name']) => events.filter((event) => event.name === name);
  await expect.poll(() => told('evaluation.failed'), { timeout: 10_000 }).toHaveLength(1);
  expect(told('evaluation.progress').length, 'it was at work').toBeGreaterThan(0);
  expect(told('evaluation.failed')[0]).toMatchObject({
    ...{ id: 'a', revision: 1 },
    problem: { code: 'evaluation-failed', detail: { reason: expect.stringMatching(/mortal\.worker\.mjs stopped/) } },
  });
  expect(told('evaluation.result')).toHaveLength(0);
  evaluator.want({ id: 'a', revision: 2, document }, ['coarse']);
  await expect.poll(() => told('evaluation.result'), { timeout: 10_000 }).toHaveLength(1);
  expect(told('evaluation.result')[0]).toMatchObject({ id: 'a', revision: 2, phase: 'coarse' });
});

test('a worker file that is not there or breaks while it loads is said to be missing', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'broken.worker.mjs'), 'this is no program');
  for (const name of ['absent.worker.mjs', 'broken.worker.mjs']) {
    const { worker, next } = start(join(folder, name));
    const ended = next();
    worker.run({ revision: 1, phase: 'coarse', document: smallTicket() });
    expect(reasonOf(await ended)?.detail?.reason).toBe(`the part of the program in ${name} does not start`);
  }
});
