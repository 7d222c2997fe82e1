import type { Step, StepFault, Wait } from './types.ts';

const readingOf = ({ mark }: Step, key: string) => mark?.readings.find((reading) => reading.key === key)?.value;
const plain = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();

/** Counts and codes that are not what they have to be. */
function exactFaults(step: Step): StepFault[] {
  return step.expects.flatMap((expected): StepFault[] => {
    const read = readingOf(step, expected.key);
    if (!expected.exact || read === undefined || expected.predicted === null) return [];
    if (plain(String(read)) === plain(String(expected.predicted))) return [];
    if (expected.unit === 'count')
      return [
        {
          code: 'count-differs',
          stepId: step.id,
          which: expected.name === 'back' ? 'back' : 'off',
          counted: Number(read),
          planned: Number(expected.predicted),
        },
      ];
    return [
      {
        code: 'code-differs',
        stepId: step.id,
        of: expected.of,
        read: String(read),
        wanted: String(expected.predicted),
      },
    ];
  });
}

function readOutFaults(step: Step): StepFault[] {
  const [first, second] = [readingOf(step, 'check-sum-1'), readingOf(step, 'check-sum-2')];
  if (first === undefined || second === undefined || plain(String(first)) === plain(String(second))) return [];
  return [{ code: 'read-outs-differ', stepId: step.id, refdes: step.parts[0] ?? '' }];
}

/** What was read and does not agree, and steps ticked although one that they wait for is open. */
export function readingFaults(steps: readonly Step[], waits: readonly Wait[]): StepFault[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const early = steps.flatMap((step): StepFault[] => {
    if (!step.done) return [];
    const wait = waits.find(({ step: id, on }) => id === step.id && byId.get(on)?.done === false);
    return wait ? [{ code: 'done-before', stepId: step.id, on: wait.on, reason: wait.reason }] : [];
  });
  return [...steps.flatMap(exactFaults), ...steps.flatMap(readOutFaults), ...early];
}
