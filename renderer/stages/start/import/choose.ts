import type { WindowImportChoices } from '../../../../shared-types/import-choices.ts';

/** Adds to the choices of the import at hand. */
export type Choose = (fields: Partial<WindowImportChoices>) => void;
