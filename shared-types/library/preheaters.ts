import type { PreheaterKind } from './library-types.ts';
import { assumption } from './sources.ts';

const source = assumption('Typical film and lag of such a preheater, our assumption until measured');

/** Kinds of bottom preheaters: film to the board's lower face (W/m2K) and first-order lag (s). */
export const PREHEATERS: readonly PreheaterKind[] = [
  { id: 'ceramic', name: 'Ceramic infrared', filmWm2K: 25, lagS: 120, source },
  { id: 'quartz', name: 'Quartz infrared', filmWm2K: 25, lagS: 40, source },
  { id: 'halogen', name: 'Halogen infrared', filmWm2K: 25, lagS: 10, source },
  { id: 'hot-air', name: 'Hot air', filmWm2K: 35, lagS: 60, source },
];

/** The kind with this id. */
export function preheaterById(id: PreheaterKind['id']): PreheaterKind {
  return PREHEATERS.find((kind) => kind.id === id) as PreheaterKind;
}
