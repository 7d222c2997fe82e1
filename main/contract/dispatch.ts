import type { z } from 'zod';
import { type RequestInput, type RequestName, type RequestOutput, requests } from '../../shared-types/contract.ts';
import { fail, type Problem, type Result } from '../../shared-types/problem.ts';
import { answerSubject, reasons, requestSubject } from '../../shared-types/words/shell.ts';
import { diskCode, fileProblem } from '../files/file-problems.ts';

type Answer<N extends RequestName> = Result<RequestOutput<N>>;
export type Handlers = { [N in RequestName]: (input: RequestInput<N>) => Answer<N> | Promise<Answer<N>> };
export type Dispatch = (name: string, input: unknown) => Promise<Result<unknown>>;

/**
 * One request: checked on the way in, handled, checked on the way out. Whatever goes wrong comes back as a problem.
 * `report` hears of errors that nobody foresaw; their text is for the log, never for the window.
 */
export function createDispatch(handlers: Handlers, report: (name: string, error: unknown) => void): Dispatch {
  return async (name, input) => {
    if (!isRequestName(name))
      return fail('refused', { where: requestSubject, detail: { reason: reasons.unknownRequest } });
    const asked = requests[name].input.safeParse(input);
    if (!asked.success) return { ok: false, problem: contractProblem(name, asked.error) };
    try {
      const handle = handlers[name] as (input: unknown) => Result<unknown> | Promise<Result<unknown>>;
      const result = await handle(asked.data);
      if (!result.ok) return result;
      const answered = requests[name].output.safeParse(result.value);
      if (answered.success) return { ok: true, value: answered.data };
      report(name, answered.error);
      return fail('internal', { where: answerSubject(name), detail: { reason: reasons.answerDoesNotFit } });
    } catch (error) {
      report(name, error);
      if (diskCode(error) !== undefined) return { ok: false, problem: fileProblem(error, '') };
      return fail('internal', { where: answerSubject(name), detail: { reason: reasons.requestFailed } });
    }
  };
}

const isRequestName = (name: string): name is RequestName => Object.hasOwn(requests, name);

function contractProblem(name: string, error: z.ZodError): Problem {
  const [issue] = error.issues;
  return { code: 'invalid-field', where: [name, ...issue.path].join('.'), detail: { reason: issue.message } };
}
