#!/usr/bin/env node
import { fail } from '../shared-types/problem.ts';
import { problemSentence } from '../shared-types/words/problems.ts';
import { runCommandLine } from './shells/command-line/run.ts';

/** The command-line door: wires the words to the commands and nothing else. */
const streams = {
  out: (text: string) => void process.stdout.write(text),
  error: (text: string) => void process.stderr.write(text),
};
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

runCommandLine(process.argv.slice(2), streams).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    streams.error(`${problemSentence(fail('internal', { file: 'heatmargin', detail: { reason } }).problem)}\n`);
    process.exitCode = 1;
  },
);
