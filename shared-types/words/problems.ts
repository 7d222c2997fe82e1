import type { Problem, ProblemCode } from '../problem.ts';

type Detail = Record<string, string | number>;
type Sentence = (detail: Detail) => { what: string; todo: string };

const sentences: Record<ProblemCode, Sentence> = {
  'not-readable': () => ({ what: 'cannot be read', todo: 'Check that the file exists and that you may read it.' }),
  'not-text': () => ({ what: 'is not a text file', todo: 'Choose the text file that the design program wrote.' }),
  'too-large': (d) => ({ what: `is larger than ${d.limit ?? 'the program takes'}`, todo: 'Choose a smaller file.' }),
  'not-json': (d) => ({
    what: `is not valid JSON${d.reason ? ` (${d.reason})` : ''}`,
    todo: 'Repair it or save it again.',
  }),
  'wrong-format': (d) => ({
    what: `is not a ${d.expected ?? 'Heatmargin file'}${d.found ? ` but ${d.found}` : ''}`,
    todo: 'Choose another file.',
  }),
  'newer-version': (d) => ({
    what: `was written by a newer Heatmargin (version ${d.found}, this one reads up to ${d.known})`,
    todo: 'Update Heatmargin; the file was left as it is.',
  }),
  'invalid-field': (d) => ({
    what: `${d.reason ?? 'has a wrong value'}`,
    todo: d.todo ? String(d.todo) : 'Correct the value and try again.',
  }),
  'migration-failed': (d) => ({
    what: `could not be brought to the current version (${d.reason ?? ''})`,
    todo: 'The file was left as it is; please report it.',
  }),
  'damaged-ticket': () => ({
    what: 'is damaged: it is no readable ticket',
    todo: 'Fetch it again, or open an earlier version from the menu of its card on the ticket shelf.',
  }),
  'missing-entry': (d) => ({
    what: `has no ${d.entry}`,
    todo: 'It is incomplete: open an earlier version, from the menu of its card on the ticket shelf.',
  }),
  'no-plan': () => ({
    what: 'is a bare board: a plan is missing',
    todo: 'Make a ticket first: heatmargin ticket BOARD -o NAME.hmticket --site REF.',
  }),
  'no-site': () => ({ what: 'has no rework site', todo: 'Mark the part to exchange first.' }),
  'no-heat-run': () => ({ what: 'has no heat run', todo: 'Add a heat run in the stage Heat.' }),
  'unknown-file-kind': (d) => ({
    what: `is of no kind that can be imported${d.found ? ` (${d.found})` : ''}`,
    todo: 'Give placements, Gerber or board files.',
  }),
  'no-placements': () => ({ what: 'holds no placements', todo: 'Give the placement (centroid) file of the board.' }),
  'no-outline': () => ({
    what: 'shows no closed outline',
    todo: 'Give the Gerber profile layer, or draw the outline.',
  }),
  'unclear-units': (d) => ({
    what: `does not say its unit${d.guess ? ` (${d.guess} is likely)` : ''}`,
    todo: 'Say mm or mil.',
  }),
  'invalid-gerber': (d) => ({
    what: `is no valid Gerber file${d.reason ? `: ${d.reason}` : ''}`,
    todo: 'Export the layer again.',
  }),
  'not-a-picture': (d) => ({
    what: `is no picture that can be used${d.found ? ` (${d.found})` : ''}`,
    todo: d.todo ? String(d.todo) : 'Give a JPEG, PNG, WebP or TIFF file.',
  }),
  'damaged-picture': () => ({
    what: 'is cut off or damaged: it cannot be drawn whole',
    todo: 'Fetch it again from the camera, or save it as JPEG or PNG from a program that still opens it.',
  }),
  'part-unknown': (d) => ({ what: `has no part ${d.refdes ?? ''}`.trimEnd(), todo: 'Check the designator.' }),
  'evaluation-failed': (d) => ({
    what: `could not be evaluated${d.reason ? `: ${d.reason}` : ''}`,
    todo: 'Check outline and profile.',
  }),
  'stale-evaluation': () => ({
    what: 'was evaluated anew meanwhile',
    todo: 'Wait for the new figures; then it plays again.',
  }),
  cancelled: () => ({ what: 'was cancelled', todo: 'Nothing was changed.' }),
  'file-exists': () => ({ what: 'exists already', todo: 'Choose another name.' }),
  'disk-full': () => ({
    what: 'could not be written: the disk is full',
    todo: 'Free some space; your changes are kept in memory until then.',
  }),
  'not-allowed': () => ({ what: 'may not be written', todo: 'Check the rights of the folder.' }),
  'not-found': () => ({ what: 'was not found', todo: 'Check the name.' }),
  'changed-elsewhere': (d) => ({
    what: `was changed elsewhere; yours is kept as ${d.copy ?? 'a copy'}`,
    todo: 'Compare the two.',
  }),
  refused: (d) => ({ what: `was refused${d.reason ? `: ${d.reason}` : ''}`, todo: 'Start from the program window.' }),
  internal: (d) => ({
    what: `failed inside the program${d.reason ? ` (${d.reason})` : ''}`,
    todo: 'Nothing was lost; please report it.',
  }),
};

/** One line: file, where, what, what to do. */
export function problemSentence(problem: Problem): string {
  const { what, todo } = sentences[problem.code](problem.detail ?? {});
  const subject = [problem.file, problem.where].filter(Boolean).join(', ');
  const separator = problem.code === 'invalid-field' ? ': ' : ' ';
  return `${subject || 'The file'}${separator}${what}. ${todo}`;
}

/** The parts of the sentence, for a notice with a title and a next step. */
export function problemWords(problem: Problem): { what: string; todo: string } {
  const { what, todo } = sentences[problem.code](problem.detail ?? {});
  const subject = [problem.file, problem.where].filter(Boolean).join(', ');
  return { what: `${subject || 'The file'} ${what}`, todo };
}
