import type { Problem, ProblemCode } from '../../../../shared-types/problem.ts';
import { DRAWING_FAILURES } from '../../../../shared-types/words/drawings.ts';
import { DESIGN_FAILURES, KIND_WORDS } from '../../../../shared-types/words/imports.ts';
import type { Recognised } from '../files/recognise.ts';
import { GERBER_FAILURES } from './notes.ts';

/** The one problem of input that gives no placements: about the only file, or else about the set. */
export function inputProblem(files: readonly Recognised[]): Problem {
  const [only] = files;
  if (only && files.length === 1) return fileProblem(only);
  const empty = files.find((file) => file.kind === 'placements');
  return { code: 'no-placements', ...(empty ? { file: empty.name } : {}) };
}

function fileProblem(file: Recognised): Problem {
  const about = (code: ProblemCode, detail?: Problem['detail']): Problem => ({
    code,
    file: file.name,
    ...(detail ? { detail } : {}),
  });
  switch (file.kind) {
    case 'noText':
      if (file.reason === 'tooLarge') return about('too-large');
      if (file.reason === 'binary') return about('not-text');
      return about('unknown-file-kind', { found: KIND_WORDS[file.reason] });
    case 'brokenLayer':
      return {
        ...about('invalid-gerber', { reason: GERBER_FAILURES[file.failure.reason] }),
        where: `line ${file.failure.line}`,
      };
    case 'brokenDesign':
      return {
        ...about('unknown-file-kind', { found: `${KIND_WORDS.brokenDesign}: ${DESIGN_FAILURES[file.failure.reason]}` }),
        where: `line ${file.failure.line}`,
      };
    case 'drawing':
      return about('no-outline');
    case 'brokenDrawing':
      return {
        ...about('unknown-file-kind', {
          found: `${KIND_WORDS.brokenDrawing}: ${DRAWING_FAILURES[file.failure.reason]}`,
        }),
        where: `line ${file.failure.line}`,
      };
    case 'bill':
      return about('unknown-file-kind', { found: KIND_WORDS.bill });
    case 'other':
      return about('unknown-file-kind', { found: KIND_WORDS[file.what] });
    default:
      return about('no-placements');
  }
}
