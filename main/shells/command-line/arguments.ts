import { parseArgs } from 'node:util';
import { missingValue, unknownOption, wrongUse } from '../../../shared-types/words/command-line.ts';
import { type Outcome, wrong } from './outcome.ts';

type Option = { type: 'string' | 'boolean'; short?: string; multiple?: boolean };
type Values = Record<string, string | boolean | (string | boolean)[] | undefined>;
export type Arguments = {
  positionals: string[];
  text(name: string): string | undefined;
  texts(name: string): string[];
  flag(name: string): boolean;
};

/** Words of a command against its options; a word that does not fit is wrong use, with a sentence. */
export function readArguments(
  words: string[],
  options: Record<string, Option>,
  least: number,
  most: number,
): Arguments | Outcome {
  let parsed: { values: Values; positionals: string[] };
  try {
    parsed = parseArgs({ args: words, options, allowPositionals: true, strict: true }) as typeof parsed;
  } catch (error) {
    return wrong(wrongUse(optionFault(words, options, (error as NodeJS.ErrnoException).code)));
  }
  const count = parsed.positionals.length;
  if (count < least) return wrong(wrongUse('A file or word is missing.'));
  if (count > most) return wrong(wrongUse(`'${parsed.positionals[most]}' is one word too many.`));
  return {
    positionals: parsed.positionals,
    text: (name) => parsed.values[name] as string | undefined,
    texts: (name) => (parsed.values[name] as string[] | undefined) ?? [],
    flag: (name) => parsed.values[name] === true,
  };
}

export const isOutcome = (value: object): value is Outcome => 'kind' in value;

/** A sentence for the option that does not fit. */
function optionFault(words: string[], options: Record<string, Option>, code: string | undefined): string {
  const named = words.filter((word) => word.startsWith('-'));
  const nameOf = (word: string): string => word.replace(/^-+/, '').replace(/=.*$/, '');
  const known = (word: string): boolean =>
    Object.entries(options).some(
      ([name, { short }]) => name === nameOf(word) || (short !== undefined && short === nameOf(word)),
    );
  const unknown = named.find((word) => !known(word));
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION' && unknown) return unknownOption(unknown);
  return missingValue(named.filter(known).map((word) => word.replace(/=.*$/, '')));
}
