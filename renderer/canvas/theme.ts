import { interpolateCividis } from 'd3-scale-chromatic';

export type ThemeName = 'light' | 'dark';

/** Colours of the canvas, 0xrrggbb. */
export type Theme = {
  name: ThemeName;
  canvas: number;
  paper: number;
  ink: number;
  softInk: number;
  rule: number;
  accent: number;
  board: number;
};

const LIGHT: Theme = {
  name: 'light',
  canvas: 0xffffff,
  paper: 0xfaf8f3,
  ink: 0x1f2328,
  softInk: 0x5b5f66,
  rule: 0xd5d0c4,
  accent: 0x2b5c8a,
  board: 0xf6f2e8,
};

const DARK: Theme = {
  name: 'dark',
  canvas: 0x17191c,
  paper: 0x17191c,
  ink: 0xe9e5dc,
  softInk: 0xa9a599,
  rule: 0x33373d,
  accent: 0x8fb8e6,
  board: 0x1e2125,
};

export const themeOf = (name: ThemeName): Theme => (name === 'dark' ? DARK : LIGHT);

/** Opacity of the heat map over the board. */
export const HEAT_ALPHA = 0.7;

export const cssColour = (colour: number): string => `#${colour.toString(16).padStart(6, '0')}`;

/** Cividis (even for every kind of colour vision) as 256 colours, [red, green, blue] each. */
export const CIVIDIS: readonly (readonly [number, number, number])[] = Array.from({ length: 256 }, (_, index) => {
  const [red = 0, green = 0, blue = 0] = (interpolateCividis(index / 255).match(/\d+/g) ?? []).map(Number);
  return [red, green, blue] as const;
});

/** A colour laid over a ground at an opacity. */
export function mixed(over: readonly number[], ground: number, alpha: number): [number, number, number] {
  const under = [(ground >> 16) & 255, (ground >> 8) & 255, ground & 255];
  const mix = (index: number) => Math.round(over[index] * alpha + under[index] * (1 - alpha));
  return [mix(0), mix(1), mix(2)];
}
