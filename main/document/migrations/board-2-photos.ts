import type { Migration } from './migrate.ts';

/** Version 2 of the board: photos that lie under it. */
export const boardPhotosStep: Migration = {
  from: 1,
  migrate: (board) => ({ ...board, photos: [] }),
};
