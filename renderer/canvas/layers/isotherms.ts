import type { FieldGrid } from '../../../shared-types/evaluation.ts';
import { celsiusToFahrenheit } from '../../../shared-types/units.ts';
import type { CanvasModel } from '../../state/canvas-model.ts';
import { type PixelBox, textBox } from '../drawing/boxes.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import { type IsothermLine, isothermLines } from '../heat/isotherms.ts';
import { labelLine } from '../heat/line-labels.ts';
import { onLaminate } from '../heat/on-board.ts';
import { type PaddedField, paddedField } from '../heat/padded-field.ts';
import { heatScale, limitLevels, shownMap, shownRange } from '../heat/shown-field.ts';
import { remembered, type Scene } from '../scene.ts';
import { projectAll } from '../view/projection.ts';
import { type Layer, sameInputs } from './layer.ts';
import { lettered } from './lettered.ts';

/** Traced lines of one face, kept until another answer comes: zooming and turning only draw them again. */
const tracer = remembered((field: Float32Array) => {
  let padded: PaddedField | null = null;
  const lines = new Map<number, IsothermLine[]>();
  return {
    padded: (grid: FieldGrid) => {
      padded ??= paddedField(field, grid);
      return padded;
    },
    lines(grid: FieldGrid, celsius: number): IsothermLine[] {
      const known = lines.get(celsius);
      if (known) return known;
      const traced = isothermLines(this.padded(grid), grid, celsius);
      lines.set(celsius, traced);
      return traced;
    },
  };
});

/** The field of one face without gaps. */
export const paddedFace = (field: Float32Array, grid: FieldGrid): PaddedField => tracer(field).padded(grid);

/** `text` empty: the line stands so close to a heavy one that its number would only crowd it. */
type Level = { celsius: number; text: string; heavy: boolean };

/** A step this close to a heavy line goes without its number, C. */
const CROWDED_C = 4.5;

/** Which lines are drawn: every step of the scale, and the solidus of the neighbours' joints heavy. */
export function isothermLevels(model: CanvasModel): Level[] {
  const { assessment, temperatureUnit: unit } = model;
  const range = shownRange(model);
  if (!range || !assessment) return [];
  const shown = (celsius: number) => String(Math.round(unit === 'F' ? celsiusToFahrenheit(celsius) : celsius));
  const heavy = limitLevels(assessment).map((celsius) => ({ celsius, text: shown(celsius), heavy: true }));
  const thin = heatScale(range, unit).levels.map((level) => ({
    celsius: level.celsius,
    text: String(level.shown),
    heavy: false,
  }));
  const nearest = (level: Level) =>
    Math.min(...heavy.map((limit) => Math.abs(limit.celsius - level.celsius)), Infinity);
  const beside = thin.filter((level) => nearest(level) >= 0.75);
  return [...heavy, ...beside.map((level) => (nearest(level) < CROWDED_C ? { ...level, text: '' } : level))];
}

/** What the isotherms and their numbers rest on. */
export const isothermInputs: Layer['inputs'] = ({ model, projection, theme }) => [
  model.assessment,
  model.moment,
  model.document.board.outline,
  model.document.board.cutouts,
  model.document.board.parts,
  model.document.plan.tags,
  model.layers.labels,
  model.layers.isotherms,
  model.shownRunId,
  model.temperatureUnit,
  projection,
  theme,
];

export const isothermLayer: Layer = { name: 'isotherms', inputs: isothermInputs, marks: drawnOnce };

function sheet(scene: Scene): Mark[] {
  const { model, projection } = scene;
  const map = model.layers.isotherms ? shownMap(model) : null;
  return map ? faceMarks(scene, map.fields[projection.side], map.grid) : [];
}

let last: { inputs: readonly unknown[]; marks: Mark[] } | null = null;

/** The sheet as it is drawn, made once for the sheet itself and for what keeps clear of its numbers. */
function drawnOnce(scene: Scene): Mark[] {
  const inputs = isothermInputs(scene);
  if (!last || !sameInputs(last.inputs, inputs)) last = { inputs, marks: sheet(scene) };
  return last.marks;
}

/** Boxes of the isotherms' numbers: those of the rings keep clear of them. */
export const isothermNumbers = (scene: Scene): PixelBox[] =>
  drawnOnce(scene).flatMap((mark) =>
    mark.kind === 'text' ? [textBox(mark, mark.text, ((mark.turnDeg ?? 0) * Math.PI) / 180)] : [],
  );

function faceMarks(scene: Scene, field: Float32Array, grid: FieldGrid): Mark[] {
  const { model, projection, theme } = scene;
  const taken = [...lettered(scene)];
  const rims: Mark[] = [];
  const lines: Mark[] = [];
  const numbers: Mark[] = [];
  const boardAt = fromPixels(projection);
  const onBoard = (at: { x: number; y: number }) => onLaminate(model.document.board, boardAt(at));
  for (const level of isothermLevels(model)) {
    const stroke: Stroke = { colour: theme.ink, width: level.heavy ? 2.5 : 1 };
    const rim: Stroke = { colour: theme.paper, width: stroke.width + 2, alpha: 0.4 };
    for (const line of tracer(field).lines(grid, level.celsius)) {
      const points = projectAll(projection, line);
      const { labels, pieces } = level.text
        ? labelLine(points, level.text, taken, onBoard)
        : { labels: [], pieces: [points] };
      for (const piece of pieces) {
        rims.push({ kind: 'line', points: piece, stroke: rim });
        lines.push({ kind: 'line', points: piece, stroke });
      }
      const face = level.heavy ? 'halo-bold' : 'halo';
      for (const label of labels) numbers.push({ kind: 'text', ...label, face, align: 'centre' });
    }
  }
  return [...rims, ...lines, ...numbers];
}

function fromPixels({ a, b, c, d, origin }: Scene['projection']) {
  const determinant = a * d - b * c;
  return ({ x, y }: { x: number; y: number }) => ({
    x: origin.x + (d * x - c * y) / determinant,
    y: origin.y + (-b * x + a * y) / determinant,
  });
}
