import { afterEach, describe, expect, it, vi } from 'vitest';
import { createState } from '../../../../../main/heat/heat-state.ts';
import { freeBytes, layOut } from '../../../../../main/heat/kernels/room.ts';
import type { HeatScene } from '../../../../../main/heat/scene.ts';
import { createSimulation } from '../../../../../main/heat/simulation.ts';
import { randomScene } from '../../../../support/heat/random-scene.ts';
import { kernelModule } from '../../../../support/kernels/build.mjs';
import { bareScene } from '../support.ts';

const CELL_M = 0.001;
const ROOM = '../../../../../main/heat/kernels/room.ts';

/** Every number that a run leaves, as bits. */
function numbersOf(scene: HeatScene, plain: boolean) {
  const simulation = createSimulation(scene, CELL_M, 0.5, [], new Map(), plain);
  const usesKernels = simulation.state.room.kernels !== null;
  simulation.advance(1e6);
  const { state, tracking } = simulation;
  const { skin: _onlyTheKernels, ...entries } = state.body;
  const faces = 2 * state.grid.cellCount;
  const arrays = {
    ...{ temperature: state.temperature.slice(0, faces), before: state.before.slice(0, faces) },
    ...{ peak: state.peak.slice(0, faces), diagonal: state.diagonal.slice(0, faces) },
    ...entries,
    ...{ overlays: state.overlays.temperature, water: state.overlays.water },
    ...{ sourceC: tracking.sourceC, meanPeak: tracking.meanPeak },
    ...{ meanPeakS: tracking.meanPeakS, energy: tracking.energy, energyAtPeak: tracking.energyAtPeak },
  };
  const pieces = tracking.series.pieces.map((piece, index) => [`series ${index}`, piece!] as const);
  const bits = [...Object.entries(arrays), ...pieces].map(
    ([name, array]) => [name, Buffer.from(array.slice().buffer)] as const,
  );
  simulation.release();
  return { usesKernels, bits, warmest: Math.max(...arrays.peak) };
}

describe('the kernels', () => {
  it('give the numbers of the plain steps to the last bit, on boards of every kind', () => {
    const seeds = Array.from({ length: 25 }, (_, index) => index + 1);
    const withKernels = seeds.map((seed) => {
      const scene = randomScene(seed);
      const [fast, plain] = [numbersOf(scene, false), numbersOf(scene, true)];
      expect(plain.usesKernels).toBe(false);
      for (const [place, [name, bits]] of fast.bits.entries()) {
        if (!bits.equals(plain.bits[place]![1])) expect.fail(`seed ${seed}: ${name} differs`);
      }
      return fast.usesKernels && fast.warmest > scene.roomC + 20;
    });
    expect(withKernels.filter(Boolean).length).toBeGreaterThan(15);
  });

  it('are compiled from the source that lies beside them', async () => {
    const { KERNEL_BYTES } = await import('../../../../../main/heat/kernels/kernel-bytes.ts');
    expect(await kernelModule()).toContain(`'${KERNEL_BYTES}'`);
  }, 90_000);
});

describe('a run’s memory', () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.resetModules();
  });

  it('is given to the next run, cleared: a thousand runs, some of them larger, lie in a few', () => {
    const memories = new Set<ArrayBufferLike>();
    for (let index = 0; index < 1000; index++) {
      const length = index % 100 === 0 ? 30_000 : 3_000;
      const { arrays, room } = layOut(({ floats }) => [floats(1, length), floats(2, length)], false);
      for (const array of arrays) if (array.some((value) => value !== 0)) expect.fail('not cleared');
      for (const array of arrays) array.fill(index);
      memories.add(arrays[0]!.buffer);
      room.release();
      room.release();
    }
    expect(memories.size).toBeLessThanOrEqual(3);
  });

  it('is not stepped any more once it was given back', () => {
    const simulation = createSimulation(randomScene(3), CELL_M, 1);
    simulation.advance(2);
    simulation.release();
    expect(() => simulation.advance(1)).toThrow('given back');
  });

  it('is bounded: of many runs at once only some memories are kept', () => {
    const runs = Array.from({ length: 20 }, () => createSimulation(bareScene(), 0.002, 1));
    const each = runs[0]!.state.temperature.buffer.byteLength;
    for (const { release } of runs) release();
    expect(freeBytes()).toBeLessThanOrEqual(Math.max(6 * each, 256e6));
    expect(freeBytes()).toBeGreaterThan(0);
  });

  it('is plain where there is no WebAssembly', async () => {
    vi.stubGlobal('WebAssembly', undefined);
    const anew = (await import(ROOM)) as typeof import('../../../../../main/heat/kernels/room.ts');
    const { arrays, room } = anew.layOut(({ floats }) => floats(0, 7), false);
    expect([arrays.length, room.kernels]).toEqual([7, null]);
    room.release();
  });

  it('is plain for a board of one column', () => {
    const square = [0, 1, 2, 3].map((turn) => [[0, 0.001, 0.001, 0][turn]!, [0, 0, 0.001, 0.001][turn]!] as const);
    const narrow = { ...bareScene(), board: { ...bareScene().board, outlines: [square] } };
    expect(createState(narrow, CELL_M).room.kernels).toBeNull();
    expect(createState(bareScene(), CELL_M).room.kernels).not.toBeNull();
  });
});
