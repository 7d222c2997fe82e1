/** Why a class was guessed: plain words that stand beside the guess, where the user can override it. */
export type GuessReason =
  | { code: 'name'; fragment: string }
  | { code: 'standard-name'; fragment: string }
  | { code: 'library'; name: string }
  | { code: 'chip'; fragment: string; size: string }
  | { code: 'chip-pads'; fragment: string; size: string }
  | { code: 'chip-unsure'; fragment: string; size: string; other: string }
  | { code: 'grid'; columns: number; rows: number; pitchMm: number }
  | { code: 'value'; fragment: string }
  | { code: 'refdes'; prefix: string }
  | { code: 'refdes-and-size'; prefix: string }
  | { code: 'nothing' };

const mm = (value: number): string => String(Number(value.toFixed(2)));

/** The reason as one sentence. */
export function guessReasonWords(reason: GuessReason): string {
  switch (reason.code) {
    case 'name':
      return `The package name says '${reason.fragment}'.`;
    case 'standard-name':
      return `'${reason.fragment}' is a land pattern name after IPC-7351: it gives family and size.`;
    case 'library':
      return `The package name is the library's '${reason.name}'.`;
    case 'chip':
      return `'${reason.fragment}' in the package name is a chip of ${reason.size} mm.`;
    case 'chip-pads':
      return `'${reason.fragment}' exists in inch and in metric codes; the pads fit ${reason.size} mm.`;
    case 'chip-unsure':
      return `'${reason.fragment}' exists in inch and in metric codes: ${reason.size} mm taken, ${reason.other} mm possible. Check it.`;
    case 'grid':
      return `Its pads form a grid of ${reason.columns} x ${reason.rows} at ${mm(reason.pitchMm)} mm.`;
    case 'value':
      return `The value says '${reason.fragment}'.`;
    case 'refdes':
      return `The designator begins with ${reason.prefix}; the package name says nothing more.`;
    case 'refdes-and-size':
      return `The designator begins with ${reason.prefix}, and its size fits; the package name says nothing more.`;
    case 'nothing':
      return 'Neither package name, pads nor designator say what it is: judged with care until somebody does.';
  }
}
