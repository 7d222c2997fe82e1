import { expect, it } from 'vitest';
import { createSimulation } from '../../../../../main/heat/simulation.ts';
import { randomScene } from '../../../../support/heat/random-scene.ts';

/** Temperatures of a bare plate of so many cells of 1 mm after a run of gas and preheater. */
function after(widthM: number, heightM: number, plain: boolean): number[] {
  const outline: [number, number][] = [
    [0, 0],
    [widthM, 0],
    [widthM, heightM],
    [0, heightM],
  ];
  const scene = randomScene(3);
  const bare = { ...scene, board: { ...scene.board, outlines: [outline], cutouts: [] }, bodies: [] };
  const simulation = createSimulation(bare, 0.001, 0.5, [], new Map(), plain);
  simulation.advance(1e6);
  const { state } = simulation;
  return [...state.temperature.slice(0, 2 * state.grid.cellCount)];
}

it.each([
  [1, 1],
  [1, 2],
  [2, 1],
  [3, 1],
  [1, 5],
  [3, 3],
])('a plate of %i x %i cells steps as in plain JavaScript, to the bit', (columns, rows) => {
  const [widthM, heightM] = [columns / 1000, rows / 1000];
  const stepped = after(widthM, heightM, false);
  expect(stepped).toHaveLength(2 * columns * rows);
  expect(Math.max(...stepped), 'it was heated at all').toBeGreaterThan(40);
  expect(stepped).toEqual(after(widthM, heightM, true));
});
