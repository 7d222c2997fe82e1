import type { PartState } from '../evaluation.ts';
import type { Side } from '../geometry.ts';
import { BANDS_NOT_COMPUTED } from './heat.ts';

/** Headings and words of the tables that the program writes. */

/** Headings that the import knows, so that the table comes back. */
export const PLACEMENT_HEADINGS = [
  'Designator',
  'Value',
  'Package',
  'Center-X (mm)',
  'Center-Y (mm)',
  'Rotation (deg)',
  'Side',
  'Fitted',
  'Height (mm)',
] as const;

export const placementSide = (side: Side): string => side;
export const yesNo = (yes: boolean): string => (yes ? 'yes' : 'no');

export const EXPOSURE_HEADINGS = [
  'Part',
  'Side',
  'Class',
  'Value',
  'Package',
  'State (estimate)',
  'Margin (K)',
  'Band, 90 % (K)',
  'Judged on',
  'Body, hottest (°C)',
  'Skin, hottest (°C)',
  'Joint, hottest (°C)',
  'Body limit (°C)',
  'Skin limit (°C)',
  'Joint limit (°C)',
  'Body margin (K)',
  'Skin margin (K)',
  'Joint margin (K)',
  'Gap to the site (mm)',
  'Worst heat run',
  'Body peak at (s)',
  'Seconds over the limit',
  'Joints melt',
  'Runs with reflow',
  'Warm cycles without reflow',
  'Advice',
  'Planned',
  'Reason',
] as const;

export const STATE_CELLS: Record<PartState, string> = {
  clear: 'below its limits',
  unsure: 'unsure: within the band of a limit',
  over: 'over a limit',
};

export const bandCell = (bandK: number | null): string | number =>
  bandK === null ? BANDS_NOT_COMPUTED : Math.round(bandK * 10) / 10;

const NOT_EVALUATED = {
  'off-board': 'not evaluated: off the board as drawn',
  'not-fitted': 'not evaluated: not fitted',
  removed: 'not evaluated: removed before',
};
export const notEvaluatedCell = (reason: keyof typeof NOT_EVALUATED): string => NOT_EVALUATED[reason];

/** What the command line says of a table written. */
export const tableFacts = (rows: number): string => `${rows} ${rows === 1 ? 'part' : 'parts'}.`;
export const EXPORT_USE = 'Say what to export: board, placements or exposures, then the ticket.';
export const EXPORT_OUTPUT = 'Name the file to write with -o FILE.';
export const ESTIMATE = 'These are estimates: data sheets, local rules and trained practice come first.';
