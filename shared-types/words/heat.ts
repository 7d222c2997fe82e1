import type { EvaluationNotice } from '../evaluation.ts';
import { numberOf, textOf } from './figures.ts';
import { rounded } from './measures.ts';

/** What an evaluation may want said. */
export type HeatNoticeCode =
  | 'outlet-from-setting'
  | 'grid-grown'
  | 'iron-not-modelled'
  | 'reynolds-low'
  | 'reynolds-high'
  | 'stand-off-out-of-range'
  | 'hood-film-assumed'
  | 'emitter-assumed'
  | 'gel-dries'
  | 'gel-lasts'
  | 'watch-point-off-board';

type Sentence = (figures: EvaluationNotice['figures'], place: string) => string;

const SENTENCES: Record<HeatNoticeCode, Sentence> = {
  'outlet-from-setting': () =>
    'The outlet temperature is taken from the dial setting (nine tenths of the rise over the room): measure it at the nozzle to be surer.',
  'grid-grown': (figures, place) =>
    `${place}: the board is too large for the usual grid; it was computed in cells of ${rounded(numberOf(figures, 'cellMm'), 2)} mm.`,
  'iron-not-modelled': (_, place) => `${place}: only the board's temperature is computed; the iron is not modelled.`,
  'reynolds-low': (figures, place) =>
    `${place}: the jet is weaker (Reynolds number ${rounded(numberOf(figures, 'reynolds'))}) than its law covers (from ${rounded(numberOf(figures, 'from'))}); the law is extended, be less sure of the figures.`,
  'reynolds-high': (figures, place) =>
    `${place}: the jet is stronger (Reynolds number ${rounded(numberOf(figures, 'reynolds'))}) than its law covers (to ${rounded(numberOf(figures, 'to'))}); be less sure of the figures.`,
  'stand-off-out-of-range': (figures, place) =>
    `${place}: the nozzle stands ${rounded(numberOf(figures, 'ratio'), 1)} diameters off; its law covers ${rounded(numberOf(figures, 'from'))} to ${rounded(numberOf(figures, 'to'))}. The nearest end is taken.`,
  'hood-film-assumed': (figures, place) =>
    `${place}: the film inside the hood, ${rounded(numberOf(figures, 'film'))} W/m²K at 30 L/min, is an assumption until a run is logged.`,
  'emitter-assumed': (figures, place) =>
    `${place}: the emitter is taken as grey with an emissivity of ${rounded(numberOf(figures, 'emissivity'), 2)}, at the temperature of its setting, with no hot air: log a run before you trust the figures.`,
  'gel-dries': (figures) =>
    `${textOf(figures, 'run')}: the gel on ${textOf(figures, 'refdes')} falls dry after ${rounded(numberOf(figures, 'seconds'))} s; from then on it insulates little. More gel, or less heat.`,
  'gel-lasts': (figures) =>
    `${textOf(figures, 'run')}: the gel on ${textOf(figures, 'refdes')} keeps some water to the end.`,
  'watch-point-off-board': (_, place) => `Watch point ${place} is not on the board: move it.`,
};

/** The sentence of a notice; a code that is not known reads as itself. */
export function heatNoticeSentence(notice: EvaluationNotice): string {
  const sentence = SENTENCES[notice.code as HeatNoticeCode];
  return sentence ? sentence(notice.figures, notice.place ?? textOf(notice.figures, 'place')) : notice.code;
}

/** What an evaluation says about itself, wherever its figures stand. */
export const BANDS_NOT_COMPUTED = 'not computed yet';
