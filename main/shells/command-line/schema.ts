import { wrongUse } from '../../../shared-types/words/command-line.ts';
import { jsonSchemaOf } from '../../document/json-schemas.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { type Command, done, wrong } from './outcome.ts';

/** `schema board|plan|profile`: the published JSON Schema on standard output. */
export const schema: Command = async (words) => {
  const given = readArguments(words, {}, 1, 1);
  if (isOutcome(given)) return given;
  const [format] = given.positionals;
  if (format !== 'board' && format !== 'plan' && format !== 'profile')
    return wrong(wrongUse(`There is no format '${format}'.`));
  return done(jsonSchemaOf(format).trimEnd());
};
