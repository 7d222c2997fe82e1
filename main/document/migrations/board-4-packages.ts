import type { Migration } from './migrate.ts';

/** Version 4 of the board: packages of its own, which nothing but this board knows. */
export const boardPackagesStep: Migration = {
  from: 3,
  migrate: (board) => ({ ...board, packages: [] }),
};
