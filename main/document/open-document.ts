import type { z } from 'zod';
import { type Board, boardSchema } from '../../shared-types/board.ts';
import { type Plan, planSchema } from '../../shared-types/plan.ts';
import { type Problem, type Result, succeed } from '../../shared-types/problem.ts';
import { boardFault } from '../../shared-types/rules/board-faults.ts';
import { planFault } from '../../shared-types/rules/plan-faults.ts';
import { andMore, fieldFault } from '../../shared-types/words/field-faults.ts';
import { BOARD, PLAN } from './migrations/formats.ts';
import { type Format, migrate } from './migrations/migrate.ts';
import { parseJson } from './parse-json.ts';

/**
 * Board JSON text to a valid board.
 * Errors: too-large, not-json, wrong-format, newer-version, migration-failed, invalid-field (with path and part).
 */
export function readBoard(text: string, file: string): Result<Board> {
  const read = readAs(text, file, BOARD, boardSchema);
  if (!read.ok) return read;
  const fault = boardFault(read.value);
  return fault ? { ok: false, problem: { ...fault, file } } : read;
}

/** Plan JSON text to a valid plan. Errors as of `readBoard`. */
export function readPlan(text: string, file: string): Result<Plan> {
  const read = readAs(text, file, PLAN, planSchema);
  if (!read.ok) return read;
  const fault = planFault(read.value);
  return fault ? { ok: false, problem: { ...fault, file } } : read;
}

/** A board as the text of its file: two spaces, stable order of keys, newline at the end. */
export const writeBoard = (board: Board): string => `${JSON.stringify(boardSchema.parse(board), null, 2)}\n`;
/** A plan as the text of its file. */
export const writePlan = (plan: Plan): string => `${JSON.stringify(planSchema.parse(plan), null, 2)}\n`;

function readAs<T>(text: string, file: string, format: Format, schema: z.ZodType<T>): Result<T> {
  const parsed = parseJson(text, file);
  if (!parsed.ok) return parsed;
  const current = migrate(parsed.value, format, file);
  if (!current.ok) return current;
  const checked = schema.safeParse(current.value);
  return checked.success
    ? succeed(checked.data)
    : { ok: false, problem: { ...fieldProblem(checked.error, current.value), file } };
}

/** The first field that does not fit, as a problem: path in the file, the part it belongs to, what is wrong. */
export function fieldProblem(error: z.ZodError, document: unknown): Problem {
  const issue = error.issues[0];
  const path = issue.path.map((step) => (typeof step === 'number' ? `[${step}]` : `.${String(step)}`)).join('');
  const owner = ownerOf(issue.path, document);
  return {
    code: 'invalid-field',
    where: `${path.replace(/^\./, '') || 'the whole'}${owner ? ` of ${owner}` : ''}`,
    detail: { reason: `${fieldFault(issue, document)}${andMore(error.issues.length - 1)}` },
  };
}

/** Name of the nearest thing on the path that has one (refdes, id or name). */
function ownerOf(path: readonly PropertyKey[], document: unknown): string | undefined {
  let at: unknown = document;
  let owner: string | undefined;
  for (const step of path) {
    at = (at as Record<PropertyKey, unknown> | undefined)?.[step];
    if (typeof at !== 'object' || at === null) break;
    const { refdes, id } = at as { refdes?: unknown; id?: unknown };
    owner = typeof refdes === 'string' ? refdes : typeof id === 'string' ? id : owner;
  }
  return owner;
}
