import { bodyOf, type Part } from '../../../shared-types/board.ts';
import type { Assessment } from '../../../shared-types/evaluation.ts';
import { boxAround, overlap, type PixelBox } from '../drawing/boxes.ts';
import type { Mark, Stroke } from '../drawing/marks.ts';
import { areaPixels, boxOfPixels, grown } from '../drawing/outline.ts';
import { closed, dashes, wavy } from '../drawing/strokes.ts';
import { actionsByName, partsByName, type Scene } from '../scene.ts';
import { project } from '../view/projection.ts';
import type { Layer } from './layer.ts';

/** How a part is outlined: 'clear' needs nothing more than its own thin edge. */
export type DrawnState = 'clear' | 'unsure' | 'over' | 'reflow' | 'unsure-reflow';

/** States of the parts an assessment speaks of; targets carry their tag instead. */
export function drawnStates(assessment: Assessment): Map<string, DrawnState> {
  const actions = actionsByName(assessment.actions);
  const states = new Map<string, DrawnState>();
  for (const exposure of assessment.evaluation.parts) {
    const action = actions.get(exposure.refdes)?.action;
    if (action === 'target') continue;
    // Ordinary small parts that may reflow where they lie are past their joint limit by intent: that is no warning.
    if (action === 'leave-will-reflow')
      states.set(exposure.refdes, exposure.state === 'unsure' ? 'unsure-reflow' : 'reflow');
    else if (exposure.state === 'over' || action === 'cannot-be-saved') states.set(exposure.refdes, 'over');
    else if (exposure.reflow !== 'none')
      states.set(exposure.refdes, exposure.state === 'unsure' ? 'unsure-reflow' : 'reflow');
    else states.set(exposure.refdes, exposure.state);
  }
  return states;
}

/** State outlines stand round the body and never get smaller than this on screen. */
const LEAST_PX = 9;
/** Bodies below this size on screen get a tighter double line. */
const SMALL_PX = 16;
/** Bodies below this size on screen that will reflow get a wave through them: rings would run into each other. */
const RING_FROM_PX = 9;
/** A '?' needs a body of this size on screen; the '!' always stands. */
const QUESTION_FROM_PX = 12;

export const stateLayer: Layer = {
  name: 'states',
  inputs: ({ model, projection, theme }) => [model.document.board.parts, model.assessment, projection, theme],
  marks(scene) {
    const { model, projection } = scene;
    if (!model.assessment) return [];
    const parts = partsByName(model.document.board.parts);
    const marks: Mark[] = [];
    for (const [refdes, state] of drawnStates(model.assessment)) {
      const part = parts.get(refdes);
      if (part && part.side === projection.side && state !== 'clear') marks.push(...stateMarks(part, state, scene));
    }
    return [...marks.filter((mark) => mark.kind !== 'text'), ...apart(marks)];
  },
};

/** Signs over the outlines; one that would cover another waits for a closer look, its outline says the same. */
function apart(marks: readonly Mark[]): Mark[] {
  const taken: PixelBox[] = [];
  return marks.filter((mark) => {
    if (mark.kind !== 'text') return false;
    const box = boxAround(mark, 7, 11);
    if (taken.some((other) => overlap(box, other))) return false;
    taken.push(box);
    return true;
  });
}

export function stateMarks(part: Part, state: Exclude<DrawnState, 'clear'>, { projection, theme }: Scene): Mark[] {
  const ring = (byPx: number) =>
    part.package.shape === 'round'
      ? circle(part, byPx, projection)
      : areaPixels(grown(bodyOf(part), projection, byPx, LEAST_PX + 2 * byPx - 4), projection);
  const stroke: Stroke = { colour: theme.ink, width: 1.25 };
  const long = Math.max(part.package.lengthMm, part.package.widthMm) * projection.zoom;
  const marks: Mark[] = [];
  if (state === 'over') {
    // Round a small body the two lines draw together, or neighbours would run into each other.
    const [inner, outer] = long < SMALL_PX ? [1.5, 3.5] : [2, 5];
    const line = { ...stroke, width: long < SMALL_PX ? 1 : stroke.width };
    for (const byPx of [inner, outer]) marks.push({ kind: 'polygon', points: ring(byPx), stroke: line });
    marks.push(letter('!', part, ring(outer)));
  } else if (state === 'unsure') {
    for (const points of dashes(closed(ring(2.5)), 4, 3)) marks.push({ kind: 'line', points, stroke });
  } else if (long < RING_FROM_PX)
    marks.push({ kind: 'line', points: throughWave(part, projection), stroke: { ...stroke, width: 1 } });
  else marks.push({ kind: 'polygon', points: wavy(ring(2.5), 1.4, 6), stroke: { ...stroke, width: 1 } });
  if (state.startsWith('unsure') && long >= QUESTION_FROM_PX) marks.push(letter('?', part, ring(4)));
  return marks;
}

function circle(part: Part, byPx: number, projection: Scene['projection']): number[] {
  const { x, y } = project(projection, part);
  const radius = Math.max(LEAST_PX / 2, (part.package.lengthMm * projection.zoom) / 2) + byPx;
  return Array.from({ length: 40 }, (_, i) => (2 * Math.PI * i) / 40).flatMap((angle) => [
    x + radius * Math.cos(angle),
    y + radius * Math.sin(angle),
  ]);
}

/** One and a half waves along a small body, 9 px long. */
function throughWave(part: Part, projection: Scene['projection']): number[] {
  const lengthwise = part.package.lengthMm >= part.package.widthMm;
  const radians = ((part.turn + (lengthwise ? 0 : 90)) * Math.PI) / 180;
  const at = project(projection, part);
  const ahead = project(projection, { x: part.x + Math.cos(radians), y: part.y + Math.sin(radians) });
  const dx = (ahead.x - at.x) / projection.zoom;
  const dy = (ahead.y - at.y) / projection.zoom;
  return Array.from({ length: 10 }, (_, i) => i - 4.5).flatMap((along) => {
    const off = 1.8 * Math.sin((along / 9) * 3 * Math.PI);
    return [at.x + along * dx - off * dy, at.y + along * dy + off * dx];
  });
}

/** A sign at the upper left of the outline, outside it. */
function letter(text: string, part: Part, ring: readonly number[]): Mark {
  const box = boxOfPixels(ring);
  // Beside a round body the corner of its box lies far off: the sign moves in to its rim.
  const inward = part.package.shape === 'round' ? 0.146 * (box.maxX - box.minX) - 4 : -1;
  return { kind: 'text', x: box.minX + inward, y: box.minY + inward, text, face: 'halo-bold', align: 'centre' };
}
