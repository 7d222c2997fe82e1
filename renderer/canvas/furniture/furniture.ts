import { celsiusToFahrenheit } from '../../../shared-types/units.ts';
import { canvasWords } from '../../../shared-types/words/canvas.ts';
import type { CanvasModel } from '../../state/canvas-model.ts';
import type { Sketch } from '../../tools/tool.ts';
import { heatScale, limitLevels, shownRange } from '../heat/shown-field.ts';
import { sameInputs } from '../layers/layer.ts';
import { type Theme, themeOf } from '../theme.ts';
import './furniture.css';
import { legendColour, writtenLevels } from './legend-scale.ts';
import { scaleBar } from './scale-bar.ts';

/** Words and scales over the drawing, as DOM text so that they are crisp and readable for everyone. */
export type Furniture = {
  update(model: CanvasModel, zoom: number): void;
  marquee(sketch: Sketch | null): void;
  destroy(): void;
};

const LEGEND_PX = 264;

export function makeFurniture(host: HTMLElement): Furniture {
  const lie = element('div', 'hm-canvas-lie');
  const foot = element('div', 'hm-canvas-foot');
  const legend = element('div', 'hm-canvas-legend');
  const scale = element('div', 'hm-canvas-scale');
  const bar = element('div', 'hm-canvas-scale-bar');
  const length = element('span', 'hm-canvas-figure');
  const marquee = element('div', 'hm-canvas-marquee');
  scale.append(bar, length);
  foot.append(legend, scale);
  host.append(lie, foot, marquee);
  marquee.hidden = true;
  let drawn: readonly unknown[] | null = null;
  return {
    update(model, zoom) {
      setText(lie, canvasWords.lie(model.shownSide, model.viewTurnDeg));
      const round = scaleBar(zoom, model.lengthUnit);
      bar.style.width = `${Math.round(round.px)}px`;
      setText(length, canvasWords.scaleBar(round.length, model.lengthUnit));
      const inputs = [
        model.assessment,
        model.moment,
        model.stale,
        model.shownRunId,
        model.temperatureUnit,
        model.theme,
        model.layers,
      ];
      if (sameInputs(drawn, inputs)) return;
      drawn = inputs;
      drawLegend(legend, model, themeOf(model.theme));
    },
    marquee(sketch) {
      marquee.hidden = sketch?.kind !== 'marquee';
      if (sketch?.kind !== 'marquee') return;
      const { from, to } = sketch;
      marquee.style.transform = `translate(${Math.min(from.x, to.x)}px, ${Math.min(from.y, to.y)}px)`;
      marquee.style.width = `${Math.abs(to.x - from.x)}px`;
      marquee.style.height = `${Math.abs(to.y - from.y)}px`;
    },
    destroy() {
      for (const node of [lie, foot, marquee]) node.remove();
    },
  };
}

function element<K extends 'div' | 'span'>(tag: K, className: string): HTMLElementTagNameMap[K] {
  const node = document.createElement(tag);
  node.className = className;
  return node;
}

function setText(node: HTMLElement, text: string): void {
  if (node.textContent !== text) node.textContent = text;
}

/** The colour scale with the isotherms' numbers; the solidus of the neighbours as a heavy line across it. */
function drawLegend(legend: HTMLElement, model: CanvasModel, theme: Theme): void {
  const { assessment, temperatureUnit, shownRunId } = model;
  const wanted = assessment !== null && (model.layers.heat || model.layers.isotherms);
  const range = wanted ? shownRange(model) : null;
  legend.hidden = range === null;
  legend.replaceChildren();
  if (!range || !assessment) return;
  const scale = heatScale(range, temperatureUnit);
  const run = model.document.plan.heatRuns.find((one) => one.id === shownRunId);
  const title = element('div', 'hm-canvas-legend-title');
  const words = element('span', 'hm-canvas-legend-words');
  words.textContent = run ? canvasWords.legend.run(run.name) : canvasWords.legend.worst;
  if (run && model.moment) words.textContent = canvasWords.legend.moment(run.name, model.moment.atS);
  const unit = element('span', 'hm-canvas-unit');
  unit.textContent = temperatureUnit === 'F' ? '°F' : '°C';
  title.append(words, unit);
  legend.append(title);
  const share = (celsius: number) => (celsius - scale.lowC) / (scale.highC - scale.lowC);
  const ruler = element('div', 'hm-canvas-legend-ruler');
  ruler.append(stripe((at) => legendColour(at, scale, theme.board), model.layers.heat));
  const written = new Set(writtenLevels(scale.levels.length, LEGEND_PX));
  scale.levels.forEach((level, index) => {
    ruler.append(tick(share(level.celsius), written.has(index) ? String(level.shown) : '', 'hm-canvas-tick'));
  });
  const limits = limitLevels(assessment).filter((celsius) => share(celsius) > 0 && share(celsius) < 1);
  for (const celsius of limits) ruler.append(tick(share(celsius), '', 'hm-canvas-tick hm-canvas-tick-limit'));
  legend.append(ruler);
  const shown = (celsius: number) =>
    String(Math.round(temperatureUnit === 'F' ? celsiusToFahrenheit(celsius) : celsius));
  const note = element('div', 'hm-canvas-legend-note');
  if (model.stale) note.textContent = canvasWords.legend.updating;
  else if (limits.length > 0) note.textContent = canvasWords.legend.solidus(limits.map(shown).join(', '));
  legend.append(note);
}

/** The colours side by side, one pixel column each. */
function stripe(colourAt: (share: number) => string, filled: boolean): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.className = 'hm-canvas-legend-colours';
  canvas.width = LEGEND_PX;
  canvas.height = 1;
  const context = canvas.getContext('2d');
  if (!context || !filled) return canvas;
  for (let x = 0; x < LEGEND_PX; x++) {
    context.fillStyle = colourAt((x + 0.5) / LEGEND_PX);
    context.fillRect(x, 0, 1, 1);
  }
  return canvas;
}

function tick(share: number, text: string, className: string): HTMLElement {
  const node = element('div', className);
  node.style.left = `${(share * 100).toFixed(2)}%`;
  if (text) {
    const number = element('span', 'hm-canvas-figure');
    number.textContent = text;
    node.append(number);
  }
  return node;
}
