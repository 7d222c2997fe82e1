import { describe, expect, it } from 'vitest';
import { legendColour, writtenLevels } from '../../../../renderer/canvas/furniture/legend-scale.ts';
import { scaleBar } from '../../../../renderer/canvas/furniture/scale-bar.ts';
import { colourIndex, heatPixels } from '../../../../renderer/canvas/heat/heat-image.ts';
import { heatScale } from '../../../../renderer/canvas/heat/shown-field.ts';
import { CIVIDIS } from '../../../../renderer/canvas/theme.ts';
import { canvasWords } from '../../../../shared-types/words/canvas.ts';

describe('the words over the drawing', () => {
  it('say which side is seen, from where, and how it is turned', () => {
    expect(canvasWords.lie('top', 0)).toBe('Top, seen from above');
    expect(canvasWords.lie('bottom', 90)).toBe('Bottom, seen from below, turned 90°');
    expect(canvasWords.lie('top', -90)).toBe('Top, seen from above, turned 270°');
  });
});

describe('the scale bar', () => {
  it('is a round length that fits', () => {
    for (const [zoom, mm] of [
      [7, 10],
      [5.1, 20],
      [2, 50],
      [60, 2],
      [240, 0.5],
    ])
      expect(scaleBar(zoom, 'mm').length).toBe(mm);
    for (let zoom = 0.2; zoom < 240; zoom *= 1.13) {
      const { length, px } = scaleBar(zoom, 'mm');
      expect(px).toBeCloseTo(length * zoom, 9);
      expect(px).toBeLessThanOrEqual(130.0001);
      expect(px).toBeGreaterThan(50);
    }
  });

  it('is a round number of mil for who works in mil (1 mil = 0.0254 mm by the definition of the inch)', () => {
    const { length, px } = scaleBar(10, 'mil');
    expect(length).toBe(500);
    expect(px).toBeCloseTo(127, 9);
    expect(canvasWords.scaleBar(length, 'mil')).toBe('500 mil');
    expect(canvasWords.scaleBar(0.5, 'mm')).toBe('500 µm');
  });
});

describe('the colours', () => {
  const scale = heatScale({ low: 100, high: 260 }, 'C');

  it('run from the dark to the light end of cividis with rising temperature', () => {
    expect(colourIndex(100, scale)).toBe(0);
    expect(colourIndex(260, scale)).toBe(255);
    const brightness = CIVIDIS.map(([r, g, b]) => 0.2126 * r + 0.7152 * g + 0.0722 * b);
    for (let i = 8; i < 256; i += 8) expect(brightness[i]).toBeGreaterThan(brightness[i - 8]);
  });

  it('are those of the published map at its ends', () => {
    // Nunez, Anderton and Renslow 2018, cividis runs from (0, 34, 78) to (254, 232, 56); figures from memory. The
    // library takes a polynomial through the map, which is up to 14 off at the yellow end.
    const near = (a: readonly number[], b: readonly number[]) =>
      Math.max(...a.map((value, i) => Math.abs(value - b[i])));
    expect(near(CIVIDIS[0], [0, 34, 78])).toBeLessThan(5);
    expect(near(CIVIDIS[255], [254, 232, 56])).toBeLessThan(16);
  });

  it('on the legend are the colours on the board', () => {
    const field = { values: new Float32Array([180]), columns: 1, rows: 1, pad: 0 };
    const [red, green, blue] = heatPixels(field, scale);
    const mix = (over: number, under: number) => Math.round(0.7 * over + 0.3 * under);
    expect(legendColour(0.5, scale, 0xf6f2e8)).toBe(`rgb(${mix(red, 0xf6)}, ${mix(green, 0xf2)}, ${mix(blue, 0xe8)})`);
  });

  it('carry numbers that do not touch', () => {
    expect(writtenLevels(8, 264)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    expect(writtenLevels(12, 264)).toEqual([0, 2, 4, 6, 8, 10]);
  });
});
