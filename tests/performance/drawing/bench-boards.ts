import type { Part } from '../../../shared-types/board.ts';

/** What somebody types for the package whose print, size and pins he sees; a body without a name is measured. */
const TYPED: Readonly<Record<string, string>> = {
  'BGA 10x10 0.8': 'bga 10x10 0.8',
  'Tantalum 7343-31': 'tant 7343',
  'Tantalum 3528-21': 'tant 3528',
  'Li cell AA half': '26x15x15',
  'Wire connector 4 x 2.0': '10x5x6',
  'Tact switch 4x3': '4.2x3.2x2.5',
  'Pin header 1x06 2.54': 'pin header 1x06',
  'Test point 1 mm': 'test point 1',
};

export const typedFor = ({ package: { name } }: Part): string =>
  TYPED[name] ?? name.toLowerCase().replace(/^[crl] (?=\d{4}$)/, '');

/** True when half a turn leaves the part as it looks. */
export const looksTheSameTurned = (part: Part): boolean => !part.pin1 && (part.pinCount ?? 2) <= 2;
