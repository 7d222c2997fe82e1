import { describe, expect, it } from 'vitest';
import { paddedField } from '../../../../renderer/canvas/heat/padded-field.ts';
import {
  bandAt,
  heatScale,
  limitLevels,
  rangeOf,
  shownFields,
  temperatureAt,
} from '../../../../renderer/canvas/heat/shown-field.ts';
import { assessmentOf } from './sample.ts';

const plane = (x: number, y: number) => 100 + 2 * x - 0.5 * y;

describe('temperature at a place', () => {
  const { grid, fields } = assessmentOf(plane).evaluation;

  it('is exact on a plane between cell centres', () => {
    for (const at of [
      { x: 10.5, y: 20.5 },
      { x: 33.21, y: 7.9 },
      { x: 71, y: 44 },
    ])
      expect(temperatureAt(fields.top, grid, at)).toBeCloseTo(plane(at.x, at.y), 3);
  });

  it('is nothing off the grid and where there is no board', () => {
    expect(temperatureAt(fields.top, grid, { x: -0.1, y: 10 })).toBeNull();
    const holed = assessmentOf((x, y) => (Math.hypot(x - 40, y - 30) < 4 ? Number.NaN : plane(x, y))).evaluation;
    expect(temperatureAt(holed.fields.top, grid, { x: 40, y: 30 })).toBeNull();
  });

  it('leans on the cells that have board beside a hole', () => {
    const holed = assessmentOf((x) => (x > 40 ? Number.NaN : 150)).evaluation;
    expect(temperatureAt(holed.fields.top, grid, { x: 39.9, y: 30 })).toBeCloseTo(150, 6);
  });
});

describe('the band at a place', () => {
  const assessment = assessmentOf(plane);
  const { grid, fields } = assessment.evaluation;
  const flat = (value: number) => ({ top: fields.top.map(() => value), bottom: fields.bottom.map(() => value + 1) });
  const bandFields = { grid, worst: flat(20), runs: [{ runId: 'run-1', fields: flat(12) }] };
  const banded = { ...assessment, evaluation: { ...assessment.evaluation, bandFields } };
  const at = { x: 40, y: 30 };

  it('is that of the shown run and side, or of the worst', () => {
    expect(bandAt({ assessment: banded, moment: null, shownRunId: 'run-1' }, 'top', at)).toBeCloseTo(12, 6);
    expect(bandAt({ assessment: banded, moment: null, shownRunId: null }, 'bottom', at)).toBeCloseTo(21, 6);
  });

  it('is not told before it is known, nor for a moment of a run', () => {
    expect(bandAt({ assessment, moment: null, shownRunId: null }, 'top', at)).toBeNull();
    const moment = { ...fields, atS: 60, grid };
    expect(bandAt({ assessment: banded, moment, shownRunId: 'run-1' }, 'top', at)).toBeNull();
  });
});

describe('the scale', () => {
  it('runs in whole steps of 20 C from below the coldest to above the hottest', () => {
    const scale = heatScale({ low: 104, high: 236 }, 'C');
    expect(scale.levels.map((level) => level.shown)).toEqual([100, 120, 140, 160, 180, 200, 220, 240]);
    expect([scale.lowC, scale.highC]).toEqual([100, 240]);
  });

  it('runs in whole steps of 40 F when Fahrenheit is shown', () => {
    const scale = heatScale({ low: 104, high: 236 }, 'F');
    expect(scale.levels.map((level) => level.shown)).toEqual([200, 240, 280, 320, 360, 400, 440, 480]);
    // 32 F is 0 C and 212 F is 100 C by definition.
    expect(heatScale({ low: 0, high: 100 }, 'F').levels[0].celsius).toBeCloseTo(-17.778, 3);
  });

  it('is the same for both faces', () => {
    const { fields } = assessmentOf(plane).evaluation;
    fields.bottom[0] = 60;
    expect(rangeOf(fields)?.low).toBe(60);
  });
});

describe('what is shown', () => {
  it('takes the fields of the chosen heat run, else the worst over all', () => {
    const assessment = assessmentOf(plane);
    const own = { top: new Float32Array([1]), bottom: new Float32Array([2]) };
    const run = { runId: 'run-2', seconds: 1, fields: own, targets: [], watch: [], segments: [] };
    assessment.evaluation.runs.push(run);
    expect(shownFields(assessment, 'run-2')).toBe(own);
    expect(shownFields(assessment, null)).toBe(assessment.evaluation.fields);
  });

  it('names the solidus of every neighbour, not of the target', () => {
    const parts = [
      { refdes: 'U1', solidusC: 240 },
      { refdes: 'C1', solidusC: 217 },
      { refdes: 'C2', solidusC: 183 },
      { refdes: 'C3', solidusC: 217 },
    ];
    const actions = [{ refdes: 'U1', action: 'target' as const, reason: '', figures: {}, done: false }];
    expect(limitLevels(assessmentOf(plane, parts, { actions }))).toEqual([183, 217]);
  });
});

describe('the field without gaps', () => {
  it('keeps every value and fills the rest from the nearest board', () => {
    const { grid, fields } = assessmentOf((x) => (x < 10 ? Number.NaN : 150 + x)).evaluation;
    const padded = paddedField(fields.top, grid);
    const at = (column: number, row: number) =>
      padded.values[(row + padded.pad) * padded.columns + column + padded.pad];
    expect(at(50, 20)).toBeCloseTo(200.5, 4);
    expect(at(9, 20)).toBeCloseTo(160.5, 4);
    expect(at(-1, -1)).toBeCloseTo(160.5, 4);
    expect(padded.values.some(Number.isNaN)).toBe(false);
  });
});
