import { commandHelp } from '../../../shared-types/words/command-help.ts';
import { USAGE, unknownCommand } from '../../../shared-types/words/command-line.ts';
import { problemSentence } from '../../../shared-types/words/problems.ts';
import { calibrate } from './calibrate.ts';
import { check } from './check.ts';
import { evaluateCommand } from './evaluate.ts';
import { example } from './example.ts';
import { exportCommand } from './export.ts';
import { importCommand } from './import.ts';
import type { Command, Outcome, Tools } from './outcome.ts';
import { schema } from './schema.ts';
import { searchCommand } from './search.ts';
import { stepsCommand } from './steps.ts';
import { strapsCommand } from './straps.ts';
import { ticket } from './ticket.ts';
import { updateBoardCommand } from './update-board.ts';
import { workMap } from './work-map.ts';

const commands: Record<string, Command> = {
  check,
  calibrate,
  import: importCommand,
  export: exportCommand,
  ticket,
  'update-board': updateBoardCommand,
  evaluate: evaluateCommand,
  search: searchCommand,
  straps: strapsCommand,
  steps: stepsCommand,
  'work-map': workMap,
  schema,
  example,
};

type Streams = { out(text: string): void; error(text: string): void };

/** Runs one command line; returns the exit status: 0 ok, 1 a problem in the input, 2 wrong use. */
export async function runCommandLine(words: string[], streams: Streams, tools: Tools = {}): Promise<number> {
  const [name, ...rest] = words;
  if (name === '--help' || name === '-h' || name === 'help') {
    streams.out(`${USAGE}\n`);
    return 0;
  }
  if (name === undefined) {
    streams.error(`${USAGE}\n`);
    return 2;
  }
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  const help = command && rest.some((word) => word === '--help' || word === '-h') ? commandHelp(name) : null;
  if (help) {
    streams.out(`${help}\n`);
    return 0;
  }
  if (!command) return report({ kind: 'wrong-use', sentence: unknownCommand(name) }, streams);
  return report(await command(rest, tools), streams);
}

function report(outcome: Outcome, streams: Streams): number {
  if (outcome.kind === 'wrong-use') {
    streams.error(`heatmargin: ${outcome.sentence}\n`);
    return 2;
  }
  for (const line of outcome.lines ?? []) streams.out(`${line}\n`);
  if (outcome.kind === 'done') return 0;
  streams.error(`${problemSentence(outcome.problem).replace(/\s*\n\s*/g, ' ')}\n`);
  return 1;
}
