import type { TableChoice } from '../../../../shared-types/import-choices.ts';
import type { Heading } from './heading.ts';

/** Shapes are keys of settings: no longer than this. */
const LONGEST = 500;

/** What tables of one kind have in common: separator and headings; without headings the count of columns. */
export function shapeOf({ index, separator, columns }: Heading): string {
  const headings =
    index < 0
      ? `no headings, ${columns.length} columns`
      : columns.map(({ heading }) => heading.toLowerCase()).join('|');
  return `${separator === '\t' ? 'tab' : separator} ${headings}`.slice(0, LONGEST);
}

/** The heading with the meanings that were chosen for its columns; a choice for another number of columns does not fit. */
export function withChoice(heading: Heading, choice: TableChoice | undefined): Heading {
  const chosen = choice?.columns;
  if (chosen?.length !== heading.columns.length) return heading;
  return {
    ...heading,
    columns: heading.columns.map((column, index) => ({ ...column, meaning: chosen[index] })),
  };
}
