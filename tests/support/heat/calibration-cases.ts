import type { Attachment } from '../../../main/heat/calibration/log-model.ts';
import { figureName } from '../../../main/heat/uncertainty/figures.ts';
import { type Board, emptyBoard } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import type { TagOf } from '../../../shared-types/tags.ts';
import { part, run, segment, smallBoard, smallPlan } from '../../unit/main/heat/support.ts';

type Place = { x: number; y: number; side: 'top' | 'bottom'; refdes: string | null };

/** A scrap board on a station, its thermocouples, and figures of the next run that the calibration must foretell. */
export type CalibrationCase = {
  name: string;
  board: Board;
  plan: Plan;
  attached: Attachment[];
  figures: [label: string, name: string][];
};

function watched(plan: Plan, places: readonly Place[]): Plan {
  const tags = places.map(
    (place, index): TagOf<'watchPoint'> => ({
      ...{ id: `w${index}`, kind: 'watchPoint', name: `W${index + 1}`, order: null, note: '' },
      ...place,
    }),
  );
  return { ...plan, tags };
}

const coldest: [string, string] = ['target, coldest joint', figureName.target('run-1', 'site-1', 'coldest')];

/** Sixty by forty-four, a nozzle in the hand, five thermocouples: the one the fit was developed on. */
export function handCase(): CalibrationCase {
  const board = smallBoard();
  const places: Place[] = [
    { x: 24, y: 16, side: 'top', refdes: null },
    { x: 30, y: 22, side: 'bottom', refdes: null },
    { x: 44, y: 22, side: 'top', refdes: 'U2' },
    { x: 38, y: 30, side: 'top', refdes: null },
    { x: 12, y: 10, side: 'top', refdes: null },
  ];
  return {
    ...{ name: 'hand', board, plan: watched(smallPlan(board), places) },
    attached: ['epoxy', 'soldered', 'epoxy', 'taped', 'epoxy'],
    figures: [
      coldest,
      ['U2, body', figureName.part('U2', 'body')],
      ['C1, joint', figureName.part('C1', 'joint')],
      ['C9 underside, joint', figureName.part('C9', 'joint')],
      ['E1, skin', figureName.part('E1', 'skin')],
      ['C2, far, joint', figureName.part('C2', 'joint')],
    ],
  };
}

/** Ninety by seventy under a hood, its outlet not measured, halogen below; three thermocouples. */
export function hoodCase(): CalibrationCase {
  const board: Board = {
    ...emptyBoard('hood', 90, 70),
    parts: [
      part('U1', 40, 38, [21, 21, 1.8], { class: 'bga' }),
      part('U2', 62, 38, [9, 9, 1], { class: 'so' }),
      part('C1', 53.5, 42, [3.2, 1.6, 1.2]),
      part('Q1', 40, 38, [5, 6, 1.1], { class: 'so', side: 'bottom' }),
      part('L1', 20, 60, [10, 10, 5], { class: 'so' }),
    ],
  };
  const plan = smallPlan(board);
  return {
    name: 'hood',
    board,
    plan: watched(
      {
        ...plan,
        station: {
          ...plan.station,
          ...{ gasReads: 'setting', roomC: 21, entrainedC: 23 },
          nozzle: {
            ...{ kind: 'hood', lengthMm: 24, widthMm: 24, turnDeg: 0, standOffMm: 1, tiltDeg: 0, headingDeg: 0 },
            ...{ filmAt30LMin: 100, rimGapMm: 1, leak: 0.2 },
          },
          preheater: { kind: 'halogen', lengthMm: 76, widthMm: 58, centre: null, sensor: null, largestC: 450 },
        },
        heatRuns: [
          run('removal', 'run-1', {
            segments: [
              segment('Preheat', 70, [21, 320], null),
              segment('Soak', 90, [320, 320], null),
              segment('Gas', 80, [320, 320], [300, 360]),
              segment('Cool', 30, [21, 21], null),
            ],
          }),
        ],
      },
      [
        { x: 30.5, y: 28.5, side: 'top', refdes: null },
        { x: 62, y: 38, side: 'top', refdes: 'U2' },
        { x: 70, y: 15, side: 'bottom', refdes: null },
      ],
    ),
    attached: ['soldered', 'epoxy', 'taped'],
    figures: [
      coldest,
      ['U2, body', figureName.part('U2', 'body')],
      ['C1, joint', figureName.part('C1', 'joint')],
      ['Q1 underside, joint', figureName.part('Q1', 'joint')],
      ['L1, far, skin', figureName.part('L1', 'skin')],
    ],
  };
}

/** A narrow board worked from below, layers known, a slot nozzle in a stand, hot air with a sensor; eight beads. */
export function standCase(): CalibrationCase {
  const empty = emptyBoard('stand', 38, 84);
  const board: Board = {
    ...empty,
    laminate: { ...empty.laminate, layersKnown: true },
    parts: [
      part('U1', 18, 50, [11, 15, 1.2], { class: 'so', side: 'bottom' }),
      part('U2', 19, 30, [8, 8, 0.9], { class: 'so', side: 'bottom' }),
      part('C1', 26.5, 52, [1.6, 0.8, 0.8], { side: 'bottom' }),
      part('C2', 18, 49, [2, 1.25, 1.25]),
      part('J1', 19, 76, [20, 7, 6], { class: 'so' }),
    ],
  };
  const plan = smallPlan(board);
  const face = (x: number, y: number, side: Place['side']): Place => ({ x, y, side, refdes: null });
  return {
    name: 'stand',
    board,
    plan: watched(
      {
        ...plan,
        station: {
          ...plan.station,
          ...{ roomC: 27, entrainedC: 60, fumeExtraction: 'low' },
          nozzle: {
            ...{ kind: 'rectangular', lengthMm: 14, widthMm: 10, turnDeg: 90, standOffMm: 8 },
            ...{ sweepRadiusMm: 0, tiltDeg: 0, headingDeg: 0 },
          },
          preheater: {
            ...{ kind: 'hot-air', lengthMm: 60, widthMm: 70, centre: null, largestC: 260 },
            sensor: { x: 8, y: 50 },
          },
        },
        heatRuns: [
          run('removal', 'run-1', {
            side: 'bottom',
            segments: [
              segment('Preheat', 80, [27, 140], null),
              segment('Soak', 60, [140, 140], null),
              segment('Gas', 60, [140, 140], [350, 350]),
              segment('Cool', 40, [27, 27], null),
            ],
          }),
        ],
      },
      [
        ...[face(13, 43, 'bottom'), face(23, 57, 'bottom'), face(18, 52, 'top'), face(30, 40, 'bottom')],
        ...[face(8, 70, 'top'), face(8, 12, 'bottom')],
        { x: 19, y: 30, side: 'bottom', refdes: 'U2' },
        { x: 19, y: 76, side: 'top', refdes: 'J1' },
      ],
    ),
    attached: ['soldered', 'taped', 'epoxy', 'soldered', 'taped', 'epoxy', 'epoxy', 'taped'],
    figures: [
      coldest,
      ['U2, body', figureName.part('U2', 'body')],
      ['C1, joint', figureName.part('C1', 'joint')],
      ['C2 upper side, joint', figureName.part('C2', 'joint')],
      ['J1, skin', figureName.part('J1', 'skin')],
    ],
  };
}

/** A long thick board over a small ceramic plate, worked off its middle with a round nozzle held by hand; four beads. */
export function longCase(): CalibrationCase {
  const empty = emptyBoard('long', 118, 52);
  const board: Board = {
    ...empty,
    laminate: { ...empty.laminate, thicknessMm: 2 },
    parts: [
      part('U1', 37, 27, [17, 17, 1.6], { class: 'bga' }),
      part('U2', 58, 27, [10, 8, 1.4], { class: 'so' }),
      part('C1', 48.5, 34, [3.2, 1.6, 1.2]),
      part('R1', 36, 26, [2, 1.25, 0.6], { class: 'chip-resistor', side: 'bottom' }),
      part('J1', 101, 26, [14, 7, 7], { class: 'connector-lcp' }),
    ],
  };
  const plan = smallPlan(board);
  const face = (x: number, y: number, side: Place['side']): Place => ({ x, y, side, refdes: null });
  return {
    name: 'long',
    board,
    plan: watched(
      {
        ...plan,
        station: {
          ...plan.station,
          ...{ gasReads: 'setting', roomC: 19, entrainedC: 40, fumeExtraction: 'high' },
          nozzle: { kind: 'round', diameterMm: 8, standOffMm: 9, sweepRadiusMm: 6, tiltDeg: 0, headingDeg: 0 },
          preheater: {
            ...{ kind: 'ceramic', lengthMm: 70, widthMm: 44, centre: { x: 40, y: 26 }, sensor: null, largestC: 420 },
          },
        },
        heatRuns: [
          run('removal', 'run-1', {
            segments: [
              segment('Preheat', 150, [19, 360], null),
              segment('Soak', 60, [360, 360], null),
              segment('Gas', 90, [360, 360], [330, 380]),
              segment('Cool', 30, [19, 19], null),
            ],
          }),
        ],
      },
      [face(29, 19, 'top'), face(37, 27, 'bottom'), { x: 58, y: 27, side: 'top', refdes: 'U2' }, face(80, 12, 'top')],
    ),
    attached: ['epoxy', 'soldered', 'taped', 'epoxy'],
    figures: [
      coldest,
      ['U2, body', figureName.part('U2', 'body')],
      ['C1, joint', figureName.part('C1', 'joint')],
      ['R1 underside, joint', figureName.part('R1', 'joint')],
      ['J1, far, skin', figureName.part('J1', 'skin')],
    ],
  };
}
