import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { evaluateRuns } from '../../main/heat/evaluate.ts';
import { createRunHelper } from '../../main/workers/run-helper.ts';
import { builtPart } from '../support/shell/build-main.ts';
import { temporaryFolder } from '../support/shell/folders.ts';
import { smallTicket } from '../support/shell/small-ticket.ts';

const mainFolder = builtPart('main');
const { board, plan } = smallTicket();
const task = { board, plan, phase: 'coarse', steps: undefined, places: [0] } as const;

function helperOf(file: string, lostAfterMs?: number) {
  const cancelledUpTo = new SharedArrayBuffer(4);
  const helper = createRunHelper(file, cancelledUpTo, lostAfterMs);
  onTestFinished(() => helper.close());
  const share = (job: number) => helper.share(job, { ...task, places: [...task.places] });
  return { share, cancelled: new Int32Array(cancelledUpTo) };
}

test('a helper makes the runs that it is given, the board sent once', () => {
  const { share } = helperOf(join(mainFolder(), 'evaluation.worker.js'));
  const own = evaluateRuns(board, plan, { phase: 'coarse' }, [0]);
  expect(share(1)()).toEqual(own);
  expect(share(2)()).toEqual(own);
});

test('what a cancelled job left behind is not taken for the next answer', () => {
  const { share, cancelled } = helperOf(join(mainFolder(), 'evaluation.worker.js'));
  Atomics.store(cancelled, 0, 1);
  expect(share(1)()).toMatchObject({ ok: false, problem: { code: 'cancelled' } });
  Atomics.store(cancelled, 0, 2);
  share(2);
  expect(share(3)()).toEqual(evaluateRuns(board, plan, { phase: 'coarse' }, [0]));
});

test.each([
  ['ends at work', "workerData.port.on('message', () => process.exit(3));"],
  ['hangs', "workerData.port.on('message', () => { for (;;); });"],
  ['is no program', 'this is no program'],
])('a helper that %s is given up, and said to be lost', (_, body) => {
  const file = join(temporaryFolder(), 'weak.worker.mjs');
  writeFileSync(file, `import { workerData } from 'node:worker_threads';\n${body}\n`);
  const { share } = helperOf(file, 300);
  expect(share(1)()).toBeNull();
  expect(share(2)()).toBeNull();
});
