import type { TargetResult } from '../evaluation.ts';
import type { Side } from '../geometry.ts';
import type { HeatRun } from '../plan.ts';

/** A sentence of the sheet: plain words and figures to set strong. */
export type Phrase = readonly (string | { readonly strong: string })[];

/** A space that keeps a figure and its unit on one line. */
export const TIED = '\u00a0';
export const whole = (value: number): string => (Number.isFinite(value) ? String(Math.round(value) || 0) : '?');
export const seconds = (value: number): string => `${whole(value)}${TIED}s`;
/** Time from the start of a run as minutes:seconds. */
export const clock = (value: number): string => {
  const rounded = Math.round(value);
  return `${Math.floor(rounded / 60)}:${String(rounded % 60).padStart(2, '0')}`;
};
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
  continued: (title: string) => `${title}, continued`,
  verdict: ({ what, todo }: { what: string; todo: string }): string => `Stop: ${what}. ${todo}`,
  underSite: (names: string) => `opposite ${names}: tags and part states`,
  tagsOf: (names: string) => `round ${names}: tags, part states, distances`,
  allTags: 'tags',
  peaks: 'highest temperature over all heat runs',
  peaksOf: (run: string) => `highest temperature in ${run}`,
  runTitle: (place: number, of: number, name: string) => `Heat run ${place} of ${of}: ${name}`,
  moreRuns: (names: string) => `Further heat runs on their own sheets: ${names}.`,
  ordinary: (left: number, reflow: number) =>
    left === 0
      ? 'No ordinary parts were evaluated.'
      : `${count(left, 'ordinary part', 'ordinary parts')}: leave${reflow > 0 ? `, ${reflow} of them will reflow` : ''}.`,
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
    molten: 'Molten',
    stop: 'If not, stop',
    abort: 'Abort at',
    segment: 'Segment',
    length: 'For',
    ends: 'Ends',
    flow: 'Flow L/min',
    actualOf: (watch: string) => `${watch} actual`,
    target: 'Target',
    above: 'All above liquidus',
    verdict: 'Estimate says',
    name: 'Name',
    when: 'Date, time',
    signature: 'Signature',
  },
} as const;
