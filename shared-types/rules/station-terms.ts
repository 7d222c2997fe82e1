import type { TermId } from '../uncertainty.ts';

/** Terms that belong to the station and may travel to other boards (heat-model.md, section 8). */
export const OF_STATION: ReadonlySet<TermId> = new Set(['nozzle', 'dilution', 'outlet', 'preheater']);
