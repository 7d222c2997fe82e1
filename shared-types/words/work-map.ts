import type { TargetResult } from '../evaluation.ts';
import type { Side } from '../geometry.ts';
import type { HeatRun, Nozzle, Station } from '../plan.ts';
import { bandWords } from './uncertainty.ts';

/** A sentence of the sheet: plain words and figures to set strong. */
export type Phrase = readonly (string | { readonly strong: string })[];

/** A space that keeps a figure and its unit on one line. */
const TIED = '\u00a0';
const strong = (text: string) => ({ strong: text });
export const whole = (value: number): string => (Number.isFinite(value) ? String(Math.round(value) || 0) : '?');

export const degrees = (celsius: number): string => `${whole(celsius)}${TIED}°C`;
/** A margin or difference with its sign. */
export const signed = (kelvin: number): string =>
  `${Math.round(kelvin) < 0 ? '−' : '+'}${whole(Math.abs(Math.round(kelvin)))}`;
export const seconds = (value: number): string => `${whole(value)}${TIED}s`;
/** Time from the start of a run as minutes:seconds. */
export const clock = (value: number): string => {
  const rounded = Math.round(value);
  return `${Math.floor(rounded / 60)}:${String(rounded % 60).padStart(2, '0')}`;
};
export const ramp = (startC: number, endC: number): string =>
  Math.round(startC) === Math.round(endC) ? whole(startC) : `${whole(startC)} to ${whole(endC)}`;
/** A temperature with its figure set strong and its unit plain. */
const strongDegrees = (celsius: number): Phrase => [strong(whole(celsius)), `${TIED}°C`];
const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

/** 'Bottom, seen from below, turned 90°': how a picture lies. */
export function sideWords(side: Side, turnDeg: number): string {
  const turn = ((Math.round(turnDeg) % 360) + 360) % 360;
  const turned = turn === 0 ? '' : `, turned ${turn}°`;
  return (side === 'top' ? 'Top' : 'Bottom, seen from below') + turned;
}

export const RUN_KINDS: Record<HeatRun['kind'], string> = {
  removal: 'removal',
  'site-preparation': 'site preparation',
  installation: 'installation',
  'cover-removal': 'cover removal',
};

export const VERDICTS: Record<TargetResult['verdict'], string> = {
  melts: 'melts',
  partly: 'melts in part',
  solid: 'stays solid',
};

/** Why a photo is not on the sheet. */
const PHOTO_LEFT_OUT = {
  notMatched: 'it is not matched to the board yet',
  notThere: 'the ticket does not hold it',
  notPrintable: 'its copy cannot be printed, add the photo again',
};

/** Titles, labels and short sentences of the printed work map. */
export const SHEET = {
  ring: (mm: number) => `${mm}${TIED}mm`,
  millimetres: (mm: number) => `${mm}${TIED}mm`,
  scale: (scale: number) =>
    scale >= 1 ? `${Number(scale.toFixed(2))}${TIED}:${TIED}1` : `1${TIED}:${TIED}${Number((1 / scale).toFixed(2))}`,
  unlabelled: (names: readonly string[]) =>
    `no room to name ${names.slice(0, 6).join(', ')}${names.length > 6 ? ` and ${names.length - 6} more` : ''} (see the lists)`,
  unlabelledShort: (names: number) => `${names} not named here`,
  legend: {
    area: 'Rework area',
    areaBehind: 'Rework area, other side',
    over: 'Over its limit (!)',
    unsure: 'Within the band (?)',
    reflow: 'Joints will reflow',
    empty: 'Empty position',
    cover: 'Can, frame, stiffener',
    isotherm: 'Isotherms every 20 °C',
    photo: 'Photo, lightened',
  },
  photosLeftOut: (photos: readonly { name: string; why: keyof typeof PHOTO_LEFT_OUT }[]) =>
    `Not printed: ${photos.map(({ name, why }) => `photo ${name} (${PHOTO_LEFT_OUT[why]})`).join('; ')}.`,
  workMap: 'Work map',
  board: (name: string, revision: string) => (revision ? `${name}, revision ${revision}` : name),
  unit: 'Unit',
  customer: 'Customer',
  technician: 'Technician',
  date: 'Date',
  order: 'Order',
  orderGoesOn: 'The order goes on under ‘Order and notes’.',
  orderAndNotes: 'Order and notes',
  notes: 'Notes',
  invented: 'Invented demonstration board: it exists nowhere.',
  band: (bands: 'not-computed' | 'computed') =>
    bands === 'computed' ? 'Estimate: with its 90 % band.' : 'Estimate. Band: not computed yet.',
  defers: "Data sheets, the shop's procedures, local rules and trained practice come first.",
  footer: (program: string, printed: string) => `Heatmargin ${program}, printed ${printed}`,
  page: (page: number, pages: number) => `Page ${page} of ${pages}`,
  stopRunning:
    'Stop the run at once on smoke, a hiss, a smell of burning, a bulging or lifting part, or a reading beside its prediction.',
  noSite: 'No rework site is marked in this plan.',
  noRun: 'This plan has no heat run.',
  noTarget: 'No target in this run.',
  beforeHeat: 'Before heat',
  wholeBoard: 'Whole board',
  record: 'Record',
  findings: 'Findings',
  verdict: ({ what, todo }: { what: string; todo: string }): string => `Stop: ${what}. ${todo}`,
  underSite: (names: string) => `opposite ${names}: tags and part states`,
  tagsOf: (names: string) => `round ${names}: tags, part states, distances`,
  allTags: 'tags',
  peaks: 'highest temperature over all heat runs',
  peaksOf: (run: string) => `highest temperature in ${run}`,
  runTitle: (place: number, of: number, name: string) => `Heat run ${place} of ${of}: ${name}`,
  runFacts: (kind: HeatRun['kind'], side: Side, sites: string, length: number) =>
    `${RUN_KINDS[kind][0].toUpperCase()}${RUN_KINDS[kind].slice(1)}${sites ? ` at ${sites}` : ''}. ${side === 'top' ? 'Top' : 'Bottom'} faces the nozzle. ${seconds(length)} (${clock(length)}).`,
  moreRuns: (names: string) => `Further heat runs on their own sheets: ${names}.`,
  ordinary: (left: number, reflow: number) =>
    left === 0
      ? 'No ordinary parts were evaluated.'
      : `${count(left, 'ordinary part', 'ordinary parts')}: leave${reflow > 0 ? `, ${reflow} of them will reflow` : ''}.`,
  reflowing: (names: string) => `Will reflow (low air, do not touch, inspect afterwards): ${names}.`,
  notEvaluated: (names: string) => `Off the board as drawn, not evaluated: ${names}.`,
  noExceptions: 'No part needs anything but to be left.',
  removalCount: (parts: number, back: number) =>
    `${count(parts, 'part comes', 'parts come')} off, ${back} ${back === 1 ? 'goes' : 'go'} back.`,
  countOff: 'Counted off',
  countBack: 'Counted back',
  of: (number: number) => `of ${number}`,
  goesBack: 'goes back',
  staysOff: 'stays off',
  noSlot: 'none',
  inCircuit: 'in circuit',
  offAndBack: 'off and back',
  off: '–',
  byOutlet: 'by outlet',
  highest: 'Highest',
  peakAt: (celsius: number, at: number) => `${whole(celsius)} at ${clock(at)}`,
  range: (from: number, to: number) => `${whole(from)}–${whole(to)}`,
  ofLimit: (celsius: number, limitC: number) =>
    Number.isFinite(limitC) ? `${whole(celsius)} of ${whole(limitC)}` : whole(celsius),
  meltsAt: (verdict: string, at: number) => `${verdict}, whole at ${clock(at)}`,
  watchPlace: (name: string, side: Side, refdes: string | null, note: string) =>
    `${name}: ${side}${refdes === null ? ', on the board' : `, on ${refdes}`}${note ? `. ${note}` : ''}`,
  sides: { top: 'top', bottom: 'bottom' } satisfies Record<Side, string>,
  signOff: 'Sign-off',
} as const;

/** Headings and column titles. */
export const TABLES = {
  removals: 'Off before heat, by tray slot',
  shields: 'Shields',
  relocations: 'Relocations',
  exchanges: 'Exchanges',
  programming: 'Reprogramming',
  open: 'Neighbours that need more than leaving: still open',
  planned: 'Neighbours that need more than leaving: in the plan',
  exceptions: 'Neighbours that need more than leaving',
  notes: 'Notes of the evaluation',
  cautions: 'Cautions',
  segments: 'Segments',
  watch: 'Thermocouples',
  targets: 'Targets',
  profile: 'Set and predicted temperatures; pencil in the actual ones',
  columns: {
    tag: 'Tag',
    slot: 'Slot',
    part: 'Part',
    side: 'Side',
    what: 'What it is',
    off: 'Off',
    back: 'Back',
    note: 'Note',
    shield: 'Shield',
    on: 'On',
    from: 'From',
    to: 'To',
    comesOff: 'Comes off',
    goesOn: 'Goes on',
    way: 'How',
    done: 'Done',
    act: 'Do',
    why: 'Why',
    margin: 'Margin',
    away: 'From area',
    run: 'Heat run',
    gasOn: 'Gas on',
    molten: 'Molten',
    stop: 'If not, stop',
    gasOff: 'Gas off',
    abort: 'Abort at',
    segment: 'Segment',
    length: 'For',
    ends: 'Ends',
    preheater: 'Preheater °C',
    gasSet: 'Gas set °C',
    outlet: 'Gas outlet °C',
    flow: 'Flow L/min',
    boardEnd: 'Board °C predicted',
    actual: 'Board °C actual',
    predicted: (watch: string) => `${watch} predicted`,
    actualOf: (watch: string) => `${watch} actual`,
    target: 'Target',
    coldest: 'Coldest joint',
    hottest: 'Hottest joint',
    skin: 'Skin, limit',
    above: 'All above liquidus',
    window: 'Window',
    verdict: 'Estimate says',
    name: 'Name',
    when: 'Date, time',
    signature: 'Signature',
  },
} as const;

type WatchedAt = { watch: string; celsius: number; bandK?: number } | null;

/** The figures to act on, as phrases for the box and for the sheet of each run. */
export const ACT = {
  title: 'Start, stop, abort',
  gasAtStart: (): Phrase => [strong('0:00'), ', with the preheater'],
  gasOn: (at: number, watch: WatchedAt, boardC: number | null): Phrase => [
    strong(clock(at)),
    ...reading(watch, boardC),
  ],
  gasOnFor: (refdes: string, at: number): Phrase => [`${refdes} `, strong(clock(at))],
  gasOffFor: (refdes: string, at: number, coldestC: number): Phrase => [
    `${refdes} `,
    strong(clock(at)),
    ', joint ',
    ...strongDegrees(coldestC),
  ],
  noGas: (): Phrase => ['no gas'],
  nothing: (): Phrase => ['–'],
  molten: (refdes: string, moltenAt: number): Phrase => [`${refdes} `, strong(clock(moltenAt))],
  stop: (stopAt: number): Phrase => [strong(clock(stopAt))],
  doNotStart: (targets: readonly { refdes: string; coldestJointC: number; liquidusC: number }[]): Phrase => [
    strong('Do not start. '),
    targets
      .map(
        (target) =>
          `${target.refdes} does not melt: coldest joint ${degrees(target.coldestJointC)}, liquidus ${degrees(target.liquidusC)}`,
      )
      .join('; '),
    '. Change the profile first.',
  ],
  gasOff: (
    at: number,
    watch: WatchedAt,
    coldestC: number | null,
    windowC: { from: number; to: number } | null,
  ): Phrase => [
    strong(clock(at)),
    ...reading(watch, null),
    ...(coldestC === null ? [] : ['; coldest joint ', ...strongDegrees(coldestC)]),
    ...(windowC === null ? [] : [` (window ${whole(windowC.from)}–${whole(windowC.to)})`]),
  ],
  abortReading: (on: string, refdes: string, celsius: number, before: string | null): Phrase => [
    on === 'site' ? 'board at the site ' : `${on} `,
    ...strongDegrees(celsius),
    before === null ? ` (for ${refdes})` : ` (for ${refdes}; comes before ${before} is molten)`,
  ],
  abortSkin: (targets: string, celsius: number): Phrase => [`${targets} skin `, ...strongDegrees(celsius)],
  runInfo: (side: Side, length: number): string => `${side}, ${seconds(length)}`,
  noAbort: (): Phrase => ['no limit is watched'],
  over: (parts: readonly { refdes: string; marginK: number }[]): string =>
    `Over the limit in this run: ${parts
      .slice(0, 8)
      .map((part) => `${part.refdes} by ${whole(-part.marginK)}${TIED}K`)
      .join(', ')}${parts.length > 8 ? ` and ${parts.length - 8} more` : ''}.`,
  spare: (target: string, neighbour: string, spareS: number): string =>
    spareS < 0
      ? `${neighbour} goes over its limit ${seconds(-spareS)} before ${target} is molten.`
      : `${neighbour} goes over its limit ${seconds(spareS)} after ${target} is molten: that is the time there is.`,
  notEvaluated: (): Phrase => ['this run was not evaluated'],
};

function reading(watch: WatchedAt, boardC: number | null): Phrase {
  if (watch) {
    const band = watch.bandK === undefined ? '' : ` ${bandWords.plusMinus(whole(watch.bandK))}`;
    return [`, ${watch.watch} reads `, ...strongDegrees(watch.celsius), band];
  }
  return boardC === null ? [] : [', board at the site ', ...strongDegrees(boardC)];
}

/** What the heavy isotherms stand for. */
export const limitWords = (celsius: readonly number[]): string =>
  `${celsius.map(whole).join(', ')}${TIED}°C: joints of neighbours start to melt`;

/** Keys of the graph of a heat run. */
export const CHART = {
  board: 'board at the site, predicted',
  preheater: 'preheater, set',
  gas: 'gas, set',
};

const length = (mm: number): string => `${Number(mm.toFixed(1))}${TIED}mm`;
const sizes = (a: number, b: number): string => `${Number(a.toFixed(1))} x ${length(b)}`;

function nozzleWords(nozzle: Nozzle): string {
  const size =
    nozzle.kind === 'round'
      ? `round ${length(nozzle.diameterMm)}`
      : `${nozzle.kind} ${sizes(nozzle.lengthMm, nozzle.widthMm)}`;
  const sweep =
    'sweepRadiusMm' in nozzle && nozzle.sweepRadiusMm > 0
      ? `, kept moving on a radius of ${length(nozzle.sweepRadiusMm)}`
      : '';
  const tilt = 'tiltDeg' in nozzle && nozzle.tiltDeg > 0 ? `, leaning ${whole(nozzle.tiltDeg)}°` : '';
  return `${size}, ${length(nozzle.standOffMm)} off the board${sweep}${tilt}`;
}

/** What stands on the bench for a run, as the evaluation took it. */
export const setUpWords = (station: Station): string =>
  `Set-up: ${station.name ? `${station.name}; ` : ''}nozzle ${nozzleWords(station.nozzle)}; preheater ${station.preheater.kind} ${sizes(station.preheater.lengthMm, station.preheater.widthMm)}; room ${degrees(station.roomC)}; extraction ${station.fumeExtraction}.`;
