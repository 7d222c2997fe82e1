import type { Migration } from './migrate.ts';

/** Version 3 of the board: strap groups; nobody had described any. */
export const boardStrapsStep: Migration = {
  from: 2,
  migrate: (board) => ({ ...board, straps: [] }),
};
