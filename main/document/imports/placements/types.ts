import type { Column, LengthWord } from './columns.ts';
import type { Separator } from './split.ts';
import type { SideWord } from './values.ts';

/** One row of a placement file. x and y in the table's unit (or in mm where the value carried its own unit). */
export interface Placement {
  readonly refdes: string;
  readonly x: number;
  readonly y: number;
  /** Degrees as written. */
  readonly rotation: number;
  readonly side: SideWord;
  readonly packageName: string;
  readonly value: string;
  readonly heightMm: number | null;
  /** Height in the table's unit, where the table does not say it. */
  readonly heightUnits?: number;
  /** First pad, where the table has its columns; same unit as x and y. */
  readonly pad1: { readonly x: number; readonly y: number } | null;
  readonly fitted: boolean;
  readonly file: string;
  readonly line: number;
}

export interface SideWordUse {
  readonly word: string;
  readonly side: SideWord | null;
  readonly count: number;
  readonly chosen: boolean;
}

export interface RowFault {
  readonly line: number;
  readonly text: string;
  /** The side word that is not known. */
  readonly word?: string;
  readonly fault: 'position' | 'refdes' | 'rotation' | 'side' | 'cells';
}

export interface PlacementTable {
  readonly file: string;
  readonly encoding: string;
  readonly encodingGuessed: boolean;
  readonly separator: Separator;
  /** Line of the headings, from 1; null when the table has none and the columns were guessed by content. */
  readonly headingLine: number | null;
  readonly columns: readonly Column[];
  /** True when a user said what the columns mean. */
  readonly columnsChosen: boolean;
  /** What tables of the same kind share: separator and headings. */
  readonly shape: string;
  /** Cells of the first rows. */
  readonly sample: readonly (readonly string[])[];
  /** Millimetres per unit of the placements; null when the file does not say. */
  readonly mmPerUnit: number | null;
  readonly unit: LengthWord | null;
  readonly unitFrom: 'value' | 'heading' | 'preamble' | 'chosen' | 'unknown';
  readonly unitText: string;
  readonly decimalComma: boolean;
  readonly sideFrom: 'column' | 'preamble' | 'name' | 'pads' | 'assumed' | 'chosen';
  /** The words of its side column, the commonest first. */
  readonly sideWords: readonly SideWordUse[];
  readonly placements: readonly Placement[];
  /** Rows that could not be read, or only in part. */
  readonly faults: readonly RowFault[];
}
