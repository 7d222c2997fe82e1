import type { Assessment, FaceFields, FieldGrid } from '../../../shared-types/evaluation.ts';
import type { Point, Side } from '../../../shared-types/geometry.ts';
import { celsiusToFahrenheit, type TemperatureUnit } from '../../../shared-types/units.ts';
import type { CanvasModel } from '../../state/canvas-model.ts';

/** The peaks that are shown: of one heat run, or the worst over all (also when the run is not in the answer). */
export function shownFields(assessment: Assessment, runId: string | null): FaceFields {
  const { evaluation } = assessment;
  return evaluation.runs.find((run) => run.runId === runId)?.fields ?? evaluation.fields;
}

/** What the map shows, with the grid it lies on: a moment of the shown run, else peaks; null before there are figures. */
export function shownMap({
  assessment,
  moment,
  shownRunId,
}: ShownInputs): { fields: FaceFields; grid: FieldGrid } | null {
  if (!assessment) return null;
  if (moment) return { fields: moment, grid: moment.grid };
  return { fields: shownFields(assessment, shownRunId), grid: assessment.evaluation.grid };
}

/**
 * Half width of the 90 % band of the peak at a board point (mm), K; null before there are bands, off the board, and for a moment
 * of a run, which has none.
 */
export function bandAt({ assessment, moment, shownRunId }: ShownInputs, side: Side, at: Point): number | null {
  const bands = moment ? undefined : assessment?.evaluation.bandFields;
  if (!bands) return null;
  const fields = bands.runs.find((run) => run.runId === shownRunId)?.fields ?? bands.worst;
  return temperatureAt(fields[side], bands.grid, at);
}

type ShownInputs = Pick<CanvasModel, 'assessment' | 'moment' | 'shownRunId'>;

/** Ends of the shown temperatures, C: those of the peaks, so that colours keep their meaning while time goes by; from the room on then. */
export function shownRange(model: CanvasModel): { low: number; high: number } | null {
  const range = model.assessment && rangeOf(shownFields(model.assessment, model.shownRunId));
  if (!range || !model.moment) return range;
  return { low: Math.min(range.low, model.document.plan.station.roomC), high: range.high };
}

/**
 * Value of a field at a board point (mm), bilinear between cell centres. Cells without board take no part; where no
 * neighbour has board, or the point lies off the grid: null.
 */
export function temperatureAt(field: Float32Array, grid: FieldGrid, at: Point): number | null {
  const column = (at.x - grid.originX) / grid.cellMm - 0.5;
  const row = (at.y - grid.originY) / grid.cellMm - 0.5;
  if (column < -0.5 || row < -0.5 || column > grid.columns - 0.5 || row > grid.rows - 0.5) return null;
  const left = Math.floor(column);
  const low = Math.floor(row);
  let sum = 0;
  let weights = 0;
  for (let dy = 0; dy <= 1; dy++)
    for (let dx = 0; dx <= 1; dx++) {
      const x = Math.min(grid.columns - 1, Math.max(0, left + dx));
      const y = Math.min(grid.rows - 1, Math.max(0, low + dy));
      const value = field[y * grid.columns + x];
      const weight = Math.abs(1 - dx - (column - left)) * Math.abs(1 - dy - (row - low));
      if (Number.isNaN(value)) continue;
      sum += value * weight;
      weights += weight;
    }
  return weights > 1e-9 ? sum / weights : null;
}

/** Coldest and hottest value of both faces, C; null when there is no board in the grid. */
export function rangeOf(fields: FaceFields): { low: number; high: number } | null {
  let low = Infinity;
  let high = -Infinity;
  for (const side of ['top', 'bottom'] as const satisfies Side[])
    for (const value of fields[side]) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  return low <= high ? { low, high } : null;
}

/** Levels of the isotherms in the shown unit and in C, and the ends of the colour scale, C. */
export type HeatScale = {
  lowC: number;
  highC: number;
  levels: { shown: number; celsius: number }[];
};

/** Every 20 C, or every 40 F: about the same spacing, whole figures in both. */
export function heatScale(range: { low: number; high: number }, unit: TemperatureUnit): HeatScale {
  const step = unit === 'F' ? 40 : 20;
  const shown = (celsius: number) => (unit === 'F' ? celsiusToFahrenheit(celsius) : celsius);
  const celsius = (value: number) => (unit === 'F' ? (value - 32) / 1.8 : value);
  const first = Math.floor(shown(range.low) / step) * step;
  const last = Math.max(first + step, Math.ceil(shown(range.high) / step) * step);
  const levels = [];
  for (let value = first; value <= last; value += step) levels.push({ shown: value, celsius: celsius(value) });
  return { lowC: celsius(first), highC: celsius(last), levels };
}

/** Solidus temperatures that the joints of the neighbours were judged with, C, lowest first, at most three. */
export function limitLevels(assessment: Assessment): number[] {
  const targets = new Set(
    assessment.actions.filter((action) => action.action === 'target').map((action) => action.refdes),
  );
  const found = new Set<number>();
  for (const part of assessment.evaluation.parts) if (!targets.has(part.refdes)) found.add(Math.round(part.solidusC));
  return [...found].sort((a, b) => a - b).slice(0, 3);
}
