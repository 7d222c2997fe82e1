#!/usr/bin/env node
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fail } from '../shared-types/problem.ts';
import { problemSentence } from '../shared-types/words/problems.ts';
import { runCommandLine } from './shells/command-line/run.ts';
import { createRunHelper } from './workers/run-helper.ts';

/** The command-line door: wires the words to the commands and nothing else. */
const streams = {
  out: (text: string) => void process.stdout.write(text),
  error: (text: string) => void process.stderr.write(text),
};
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

/** Nothing is ever cancelled here: one job, one piece of memory that says so. */
const helper = createRunHelper(join(import.meta.dirname, 'evaluation.worker.js'), new SharedArrayBuffer(4));
const tools = {
  share: availableParallelism() > 1 ? helper.share.bind(null, 1) : undefined,
  // Who looks on is told how long work goes; a file or a pipe gets results and problems alone.
  tell: process.stderr.isTTY ? (line: string) => streams.error(`${line}\n`) : undefined,
};

runCommandLine(process.argv.slice(2), streams, tools).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    streams.error(`${problemSentence(fail('internal', { file: 'heatmargin', detail: { reason } }).problem)}\n`);
    process.exitCode = 1;
  },
);
