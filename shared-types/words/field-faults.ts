import type { z } from 'zod';

type Issue = z.core.$ZodIssue;

const KINDS: Record<string, string> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  tuple: 'a list',
};
const named = (kind: string): string => KINDS[kind] ?? `of the kind ${kind}`;
const listed = (values: readonly unknown[]): string => values.map((value) => `'${String(value)}'`).join(', ');

/** What the border of a value is called: a number's size, a text's or a list's length. */
function border(issue: Extract<Issue, { code: 'too_small' | 'too_big' }>): string {
  const limit = String(issue.code === 'too_small' ? issue.minimum : issue.maximum);
  const least = issue.code === 'too_small';
  if (issue.origin === 'string') return `must have at ${least ? 'least' : 'most'} ${limit} characters`;
  if (issue.origin === 'array') return `must have at ${least ? 'least' : 'most'} ${limit} entries`;
  if (issue.inclusive === false) return `must be ${least ? 'above' : 'below'} ${limit}`;
  return `must be ${limit} or ${least ? 'more' : 'less'}`;
}

const valueAt = (path: readonly PropertyKey[], document: unknown): unknown =>
  path.reduce<unknown>((at, step) => (at as Record<PropertyKey, unknown> | null | undefined)?.[step], document);

/** What is wrong with the field that an issue of `document` names, in words of ours. */
export function fieldFault(issue: Issue, document: unknown): string {
  if (issue.path.length > 0 && valueAt(issue.path, document) === undefined) return 'is missing';
  switch (issue.code) {
    case 'invalid_type':
      return `must be ${named(issue.expected)}`;
    case 'too_small':
    case 'too_big':
      return border(issue);
    case 'invalid_value':
      return `must be ${issue.values.length > 1 ? 'one of ' : ''}${listed(issue.values)}`;
    case 'unrecognized_keys':
      return `has ${issue.keys.length > 1 ? 'fields' : 'a field'} that the format does not know: ${issue.keys.join(', ')}`;
    case 'invalid_union':
      return 'has a form that the format does not know';
    default:
      return 'does not fit the format';
  }
}

export const andMore = (count: number): string =>
  count > 0 ? ` (and ${count} more ${count === 1 ? 'fault' : 'faults'})` : '';
