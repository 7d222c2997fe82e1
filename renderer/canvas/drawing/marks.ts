import type { TagKind } from '../../../shared-types/tags.ts';

/** What layers hand to the painter: plain shapes in scene pixels. Layers stay pure and testable; only the painter knows pixi. */
export type Fill = { colour: number; alpha?: number };
export type Stroke = { colour: number; width: number; alpha?: number; round?: boolean };

type Painted = { fill?: Fill; stroke?: Stroke };

/** Lettering on the canvas: always 12 px, IBM Plex Mono. `halo` letters carry a paper rim and read on anything. */
export type Face = 'ink' | 'soft' | 'halo' | 'halo-bold' | 'soft-halo' | 'accent-halo' | 'badge';

export type Mark =
  | ({ kind: 'polygon'; points: number[]; holes?: number[][] } & Painted)
  | ({ kind: 'rectangle'; x: number; y: number; width: number; height: number } & Painted)
  | ({ kind: 'circle'; x: number; y: number; radius: number } & Painted)
  | { kind: 'line'; points: number[]; stroke: Stroke }
  | {
      kind: 'text';
      x: number;
      y: number;
      text: string;
      face: Face;
      align: 'left' | 'centre' | 'right';
      /** Degrees clockwise on screen; the point stays the anchor. */
      turnDeg?: number;
    }
  | { kind: 'glyph'; x: number; y: number; tag: TagKind };

/** Size of the lettering, CSS pixels. */
export const TEXT_PX = 12;
/** Advance of one letter, CSS pixels: whole, so that letters stay sharp. */
export const LETTER_PX = 7;
export const LINE_PX = 15;

export const textWidth = (text: string): number => [...text].length * LETTER_PX;
