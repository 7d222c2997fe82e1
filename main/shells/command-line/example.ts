import type { Result } from '../../../shared-types/problem.ts';
import { succeed } from '../../../shared-types/problem.ts';
import { wrongUse } from '../../../shared-types/words/command-line.ts';
import { parseJson } from '../../document/parse-json.ts';
import { type CaseResult, runExampleCase } from '../../heat/example-case.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { type Command, done, problem, wrong } from './outcome.ts';
import { readText } from './read-input.ts';

const options = { cell: { type: 'string' }, step: { type: 'string' }, json: { type: 'boolean' } } as const;

/** `example heat CASE.json --cell MM --step SECONDS [--json]`: runs a bare case; `expected` in it is never read. */
export const example: Command = async (words) => {
  const given = readArguments(words, options, 2, 2);
  if (isOutcome(given)) return given;
  const [topic, path] = given.positionals;
  if (topic !== 'heat') return wrong(wrongUse(`There is no example '${topic}'.`));
  const cellMm = Number(given.text('cell') ?? 2);
  const stepS = Number(given.text('step') ?? 1);
  if (!(cellMm >= 0.1 && cellMm <= 50)) return wrong(wrongUse('--cell takes millimetres, 0.1 to 50.'));
  if (!(stepS >= 0.001 && stepS <= 60)) return wrong(wrongUse('--step takes seconds, 0.001 to 60.'));
  const input = caseOf(path);
  if (!input.ok) return problem(input.problem);
  const result = runExampleCase(input.value, { cellMm, stepS });
  if (!result.ok) return problem({ ...result.problem, file: path });
  return done(given.flag('json') ? JSON.stringify(result.value, null, 2) : table(result.value));
};

function caseOf(path: string): Result<unknown> {
  const text = readText(path);
  if (!text.ok) return text;
  const parsed = parseJson(text.value, path);
  return parsed.ok ? succeed(parsed.value) : parsed;
}

function table(result: CaseResult): string {
  const rows = Object.entries(result.parts).map(([ref, peaks]) =>
    [ref.padEnd(8), ...Object.values(peaks).map((celsius) => celsius.toFixed(2).padStart(9))].join(' '),
  );
  const head = `${'part'.padEnd(8)} ${['body max', 'mean', 'skin max', 'joint max', 'joint min'].map((word) => word.padStart(9)).join(' ')}  (°C)`;
  const nozzle = result.nozzle
    ? [`nozzle: Re ${result.nozzle.Re.toFixed(1)}, film ${result.nozzle.hPlateau.toFixed(2)} W/m2K`]
    : [];
  return [...nozzle, head, ...rows].join('\n');
}
