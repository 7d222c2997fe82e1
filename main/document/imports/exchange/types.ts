import type { Box, Point } from '../plane.ts';
import type { Segment } from '../segments.ts';

/** A package of the file, mm in its own axes. */
export interface DesignPackage {
  readonly outline: Box | null;
  /** Outline of the assembly drawing. */
  readonly assembly: Box | null;
  readonly heightMm: number | null;
  readonly pinOne: string | null;
  readonly pins: ReadonlyMap<string, Point>;
  readonly through: boolean;
}

export interface DesignComponent {
  readonly refdes: string;
  readonly packageName: string;
  readonly value: string;
  readonly layer: string;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  readonly mirror: boolean;
  readonly heightMm: number | null;
}

export interface DesignStep {
  readonly name: string;
  /** Closed contours of the profile: the border first, then cutouts. */
  readonly profile: readonly (readonly Segment[])[];
  readonly packages: ReadonlyMap<string, DesignPackage>;
  readonly components: readonly DesignComponent[];
}

/** What the board needs of an IPC-2581 file. */
export interface Design {
  readonly steps: readonly DesignStep[];
  /** Side by layer name, as written in capitals: TOP, BOTTOM, INTERNAL... */
  readonly layerSides: ReadonlyMap<string, string>;
  readonly copperLayers: number;
  readonly notFitted: ReadonlySet<string>;
}

export interface DesignFailure {
  readonly reason: 'notWellFormed' | 'ownEntities' | 'nestedTooDeep' | 'tooMany' | 'noUnits';
  readonly line: number;
}
