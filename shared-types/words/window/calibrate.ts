import type { Attachment } from '../../study.ts';
import type { TermId } from '../../uncertainty.ts';
import { fitStandsWords } from '../calibration.ts';

const ATTACHMENT: Record<Attachment, string> = { soldered: 'soldered', epoxy: 'epoxy', taped: 'taped' };

/** What a term is, in words of the bench. */
const MEANS: Record<TermId, string> = {
  nozzle: 'How well the gas heats under the nozzle',
  dilution: 'How fast the jet loses its heat outwards',
  outlet: 'Gas at the outlet against what the model takes',
  preheater: 'How well the preheater heats the board',
  inPlane: 'How well the board conducts along itself',
  joints: 'How well heat goes through the joints',
  idle: 'How fast the board loses heat to the room',
};

/** Words of calibrating the station from a logged run. */
export const calibrateWords = {
  open: 'Calibrate from a log',
  again: 'Calibrate again',
  title: 'Calibrate the station from a logged run',
  lead: 'Log a run on a scrap board with thermocouples at the watch points of this plan. The fit tells what this station really does; nothing changes until you take it.',
  none: 'Not calibrated: every figure rests on the assumptions of the model. A logged run on a scrap board narrows the bands.',
  noPoints: 'This plan has no watch points. Close this and place thermocouples (W) where the beads sat.',

  file: 'Choose a log file',
  otherFile: 'Another file',
  typed: 'Type peaks instead',
  typedPeaks: 'typed peaks',
  fileIs: (name: string, rows: number, minutes: string) => `${name}: ${rows} rows, ${minutes}`,
  formats: 'Delimited text of any logger: °C, °F or K, decimal comma, gaps, seconds or h:m:s.',
  run: 'Heat run that was logged',
  start: 'The run began at',
  startLikely: (seconds: string) => `Likely at ${seconds}`,
  startGuessed: 'guessed by its shape: check it',

  heads: { column: 'Column', peak: 'Peak', gaps: 'Gaps', point: 'Watch point', attachment: 'Bead', typed: 'Peak read' },
  notUsed: 'Not used',
  attachments: ATTACHMENT,
  attachmentOf: (name: string) => `How the bead of ${name} was fastened`,
  pointOf: (column: string) => `Watch point of the column ${column}`,
  peakOf: (name: string) => `Peak read at ${name}`,
  attachmentNote: 'A soldered bead reads within about 2 °C, epoxy 4, tape in the jet 10: an assumption of ours.',
  twice: (name: string) => `${name} is given to two columns.`,
  logChart: 'The log, with begin and end of the run',
  fit: 'Fit the station',
  fitting: 'The model is run again and again against the log',
  fitStands: fitStandsWords,
  cancel: 'Stop',
  needOne: 'Give at least one column or peak a watch point.',
  needSamples: (name: string) => `${name} has no reading after the begin of the run: check when the run began.`,
  result: 'What the log told',
  leftover: (readings: number, left: string) => `${readings} readings; ${left} left between log and fitted model.`,
  muchLeft:
    'That is a lot. Check begin, columns and beads before you take it: the log and the plan may not be of the same run.',
  station: 'Of the station: goes with it to other boards',
  board: 'Of this board: stays with it',
  means: (id: TermId) => MEANS[id],
  termHeads: { term: 'Term', found: 'Found', narrowed: '90 % band before and after' },
  untold: 'not told by this log',
  narrowedTo: (percent: string) => `${percent} % of before`,
  barLabel: (percent: string) => `The band is ${percent} % as wide as before`,
  curves: 'Log against model',
  bead: 'Thermocouple',
  legend: { read: 'log', before: 'model before', after: 'model after, with the bias of the bead' },
  curveChart: (name: string) => `${name}: log against model`,
  beadLeft: (rms: string, worst: string, bias: string, isHigh: boolean) =>
    `${rms} left, ${worst} at worst; the bead reads about ${bias} ${isHigh ? 'high' : 'low'}`,
  peakRead: (name: string, read: string, before: string, after: string) =>
    `${name}: read ${read}, model ${before} before and ${after} after`,
  handNote: 'The hand of this one run was fitted too and is not kept: the curve after may lie off by it.',
  keep: (station: string) => `Keep ‘${station}’ for other tickets`,
  unnamed: 'Give the station a name to keep it for other tickets.',
  take: 'Take this calibration',
  refuse: 'Refuse it',
  back: 'Back to the log',
  taken: 'calibrate the station',
  kept: (station: string) => `‘${station}’ is kept with its calibration: other tickets find it under Station.`,
};
