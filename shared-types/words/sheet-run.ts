import type { Side } from '../geometry.ts';
import type { HeatRun, Nozzle, Plan, Station } from '../plan.ts';
import type { Units } from '../units.ts';
import { type SheetFigures, sheetFigures } from './sheet-figures.ts';
import { clock, type Phrase, RUN_KINDS, seconds, TIED, whole } from './work-map.ts';

type WatchedAt = { watch: string; celsius: number; bandK?: number } | null;
type Banded = { value: number; band?: number };
const strong = (text: string) => ({ strong: text });

/** What heats from above, as the sheet names it: an infrared emitter blows no gas. */
const HEATERS = {
  gas: {
    ...{ on: 'Gas on', off: 'Gas off', none: 'no gas', key: 'gas, set' },
    ...{ set: (unit: string) => `Gas set ${unit}`, faces: 'faces the nozzle' },
    reflowing: 'low air, do not touch, inspect afterwards',
  },
  emitter: {
    ...{ on: 'Emitter on', off: 'Emitter off', none: 'no emitter', key: 'emitter, set' },
    ...{ set: (unit: string) => `Emitter set ${unit}`, faces: 'faces the emitter' },
    reflowing: 'do not touch, inspect afterwards',
  },
} as const;

/** The words of the sheet that hold figures, in the user's units, and those that name what heats from above. */
export type SheetWords = ReturnType<typeof sheetWordsFor>;

export function sheetWordsFor(units: Units, plan: Plan) {
  const figures = sheetFigures(units);
  const emits = plan.station.nozzle.kind === 'infrared';
  const heater = HEATERS[emits ? 'emitter' : 'gas'];
  const unit = figures.temperatureUnit;
  return {
    ...{ figures, emits, act: actWords(figures, heater.none) },
    columns: {
      ...{ gasOn: heater.on, gasOff: heater.off },
      ...{ preheater: `Preheater ${unit}`, gasSet: heater.set(unit), outlet: `Gas outlet ${unit}` },
      ...{ boardEnd: `Board ${unit} predicted`, actual: `Board ${unit} actual` },
      ...{ coldest: `Coldest joint ${unit}`, hottest: `Hottest joint ${unit}` },
      ...{ skin: `Skin of limit ${unit}`, window: `Window ${unit}` },
      watch: `Thermocouples, ${unit}`,
      predicted: (watch: string) => `${watch} predicted`,
    },
    chart: { board: 'board at the site, predicted', preheater: 'preheater, set', gas: heater.key },
    isotherms: `Isotherms every ${figures.isothermStep}`,
    /** What the heavy isotherms stand for. */
    limits: (celsius: readonly number[]) =>
      `${celsius.map((one) => figures.bare(one)).join(', ')}${TIED}${unit}: joints of neighbours start to melt`,
    runFacts: (kind: HeatRun['kind'], side: Side, sites: string, length: number) =>
      `${RUN_KINDS[kind][0].toUpperCase()}${RUN_KINDS[kind].slice(1)}${sites ? ` at ${sites}` : ''}. ${side === 'top' ? 'Top' : 'Bottom'} ${heater.faces}. ${seconds(length)} (${clock(length)}).`,
    reflowing: (names: string) => `Will reflow (${heater.reflowing}): ${names}.`,
    setUp: setUpWords(figures, plan.station),
  };
}

/** A duration with its band. */
export const spanWords = ({ value, band }: Banded): string =>
  `${whole(value)}${band === undefined || band < 0.5 ? '' : ` ±${whole(band)}`}${TIED}s`;

const withinSeconds = (band: number | undefined | null): string =>
  band === undefined || band === null || band < 0.5 ? '' : ` ±${whole(band)}${TIED}s`;

/** When the last joint melts, behind the estimate's verdict. */
export const meltsAt = (verdict: string, at: number, band?: number | null): string =>
  `${verdict}, whole at ${clock(at)}${withinSeconds(band)}`;

const reading = (f: SheetFigures, watch: WatchedAt, board: { celsius: number; bandK?: number } | null): Phrase => {
  if (watch) return [`, ${watch.watch} reads `, ...f.strongDegrees(watch.celsius, watch.bandK)];
  return board === null ? [] : [', board at the site ', ...f.strongDegrees(board.celsius, board.bandK)];
};

/** The figures to act on, as phrases for the box and for the sheet of each run. */
function actWords(f: SheetFigures, noGas: string) {
  return {
    title: 'Start, stop, abort',
    gasAtStart: (): Phrase => [strong('0:00'), ', with the preheater'],
    gasOn: (at: number, watch: WatchedAt, board: { celsius: number; bandK?: number } | null): Phrase => [
      strong(clock(at)),
      ...reading(f, watch, board),
    ],
    gasOnFor: (refdes: string, at: number): Phrase => [`${refdes} `, strong(clock(at))],
    gasOffFor: (refdes: string, at: number, coldestC: number): Phrase => [
      `${refdes} `,
      strong(clock(at)),
      ', joint ',
      ...f.strongDegrees(coldestC),
    ],
    noGas: (): Phrase => [noGas],
    nothing: (): Phrase => ['–'],
    molten: (refdes: string, { value, band }: Banded): Phrase => [
      `${refdes} `,
      strong(clock(value)),
      withinSeconds(band),
    ],
    stop: (stopAt: number): Phrase => [strong(clock(stopAt))],
    gasOff: (
      at: number,
      watch: WatchedAt,
      coldestC: number | null,
      windowC: { from: number; to: number } | null,
    ): Phrase => [
      strong(clock(at)),
      ...reading(f, watch, null),
      ...(coldestC === null ? [] : ['; coldest joint ', ...f.strongDegrees(coldestC)]),
      ...(windowC === null ? [] : [` (window ${f.range(windowC.from, windowC.to)})`]),
    ],
    ...limitWordsOf(f),
    notEvaluated: (): Phrase => ['this run was not evaluated'],
  };
}

/** What keeps a run from being started, what ends it early, and what time there is. */
const limitWordsOf = (f: SheetFigures) => ({
  doNotStart: (targets: readonly { refdes: string; coldestJointC: number; liquidusC: number }[]): Phrase => [
    strong('Do not start. '),
    targets
      .map(
        (target) =>
          `${target.refdes} does not melt: coldest joint ${f.degrees(target.coldestJointC)}, liquidus ${f.degrees(target.liquidusC)}`,
      )
      .join('; '),
    '. Change the profile first.',
  ],
  abortReading: (
    on: string,
    refdes: string,
    reads: { celsius: number; bandK?: number },
    before: string | null,
  ): Phrase => [
    on === 'site' ? 'board at the site ' : `${on} `,
    ...f.strongDegrees(reads.celsius, reads.bandK),
    before === null ? ` (for ${refdes})` : ` (for ${refdes}; comes before ${before} is molten)`,
  ],
  abortSkin: (targets: string, celsius: number): Phrase => [`${targets} skin `, ...f.strongDegrees(celsius)],
  runInfo: (side: Side, length: number): string => `${side}, ${seconds(length)}`,
  noAbort: (): Phrase => ['no limit is watched'],
  over: (parts: readonly { refdes: string; marginK: number }[]): string =>
    `Over the limit in this run: ${parts
      .slice(0, 8)
      .map((part) => `${part.refdes} by ${f.measures.difference(part.marginK).replace(' ', TIED)}`)
      .join(', ')}${parts.length > 8 ? ` and ${parts.length - 8} more` : ''}.`,
  spare: (target: string, neighbour: string, spareS: number, band?: number): string => {
    const span = spanWords({ value: Math.abs(spareS), band });
    if (band !== undefined && band > Math.abs(spareS))
      return `${neighbour} goes over its limit at about the time ${target} is molten (${span} ${spareS < 0 ? 'before' : 'after'}): which comes first is not sure.`;
    return spareS < 0
      ? `${neighbour} goes over its limit ${span} before ${target} is molten.`
      : `${neighbour} goes over its limit ${span} after ${target} is molten: that is the time there is.`;
  },
});

function nozzleWords(f: SheetFigures, nozzle: Nozzle): string {
  if (nozzle.kind === 'infrared')
    return `infrared emitter ${f.sizes(nozzle.lengthMm, nozzle.widthMm)}, ${f.length(nozzle.standOffMm)} off the board`;
  const size =
    nozzle.kind === 'round'
      ? `round ${f.length(nozzle.diameterMm)}`
      : `${nozzle.kind} ${f.sizes(nozzle.lengthMm, nozzle.widthMm)}`;
  const sweep =
    'sweepRadiusMm' in nozzle && nozzle.sweepRadiusMm > 0
      ? `, kept moving on a radius of ${f.length(nozzle.sweepRadiusMm)}`
      : '';
  const tilt =
    nozzle.tiltDeg > 0
      ? `, leaning ${whole(nozzle.tiltDeg)}° towards ${whole(((nozzle.headingDeg % 360) + 360) % 360)}°`
      : '';
  return `nozzle ${size}, ${f.length(nozzle.standOffMm)} off the board${sweep}${tilt}`;
}

/** What stands on the bench for a run, as the evaluation took it. */
const setUpWords = (f: SheetFigures, station: Station): string =>
  `Set-up: ${station.name ? `${station.name}; ` : ''}${nozzleWords(f, station.nozzle)}; preheater ${station.preheater.kind} ${f.sizes(station.preheater.lengthMm, station.preheater.widthMm)}; room ${f.degrees(station.roomC)}; extraction ${station.fumeExtraction}.`;
