import type { TermId } from '../uncertainty.ts';

const TERMS: Record<TermId, string> = {
  nozzle: 'film of the gas',
  dilution: 'dilution exponent',
  outlet: 'outlet',
  preheater: 'film of the preheater',
  inPlane: 'conduction along the board',
  joints: 'joints',
  idle: 'loss to the room',
};
const isDifference = (id: TermId): boolean => id === 'dilution' || id === 'outlet';

/** '×1.12', '+6 °C', '-0.05': what a step of a term does. */
function stepWords(id: TermId, step: number): string {
  if (!isDifference(id)) return `×${Math.exp(step).toFixed(2)}`;
  const sign = step < 0 ? '−' : '+';
  return id === 'outlet' ? `${sign}${Math.abs(step).toFixed(0)} °C` : `${sign}${Math.abs(step).toFixed(2)}`;
}

const spreadWords = (id: TermId, sigma: number): string =>
  isDifference(id) ? `±${sigma.toFixed(id === 'outlet' ? 0 : 2)}` : `×/÷${Math.exp(sigma).toFixed(2)}`;

/** Where a fit stands: 'Round 3: 1.2 °C left between log and model'. */
export const fitStandsWords = (round: number, left: string): string =>
  `Round ${round}: ${left} left between log and model`;

/** Words about fitting a station to a logged run. */
export const calibrationWords = {
  nameOutput: 'Name the ticket to write with -o NAME.hmticket.',
  startIsSeconds: '--start takes the seconds of the log at which the run began.',
  pointForm:
    'Name each thermocouple as --point WATCH=COLUMN,soldered|epoxy|taped or --peak WATCH=CELSIUS,soldered|epoxy|taped.',
  typedPeaks: 'typed peaks',
  noWatch: 'is no watch point of the plan',
  placeIt: 'Place the thermocouple in the plan first.',
  noPeak: (what: string) => `'${what}' is no temperature`,
  peakForm: 'Write the peak in °C.',
  noColumn: 'is no column of the log',
  columns: (known: string) => `Its columns are ${known}.`,
  applies: (station: string) =>
    `evaluations of station '${station || 'without a name'}' go by this log; terms of the board on this board only.`,
  title: 'Calibration of the station',
  forget: 'Forget it',
  madeOn: (log: string, board: string, left: string) =>
    `From ${log} on board ‘${board}’; ${left} left between log and model.`,
  stationOnly: 'This is another board: what was found of that board’s copper, joints and losses is not used here.',
  term: (id: TermId) => TERMS[id],
  found: (id: TermId, step: number) => stepWords(id, step),
  spread: (id: TermId, sigma: number) => spreadWords(id, sigma),
};

type Fit = {
  terms: readonly { id: TermId; step: number; priorSigma: number; sigma: number; told: boolean }[];
  residuals: readonly { tagId: string; rmsK: number; worstK: number; biasK: number }[];
  calibration: { leftK: number; readings: number };
};

/** Fitted against prior, residuals, and what the log could not tell. */
export function calibrationLines(fit: Fit, names: ReadonlyMap<string, string>): string[] {
  const untold = fit.terms.filter(({ told }) => !told).map(({ id }) => TERMS[id]);
  return [
    `${fit.calibration.readings} readings; ${fit.calibration.leftK.toFixed(1)} °C left between log and model (root mean square).`,
    'term                        found      one sigma   before',
    ...fit.terms.map(
      ({ id, step, priorSigma, sigma }) =>
        `${TERMS[id].padEnd(27)} ${stepWords(id, step).padEnd(10)} ${spreadWords(id, sigma).padEnd(11)} ${spreadWords(id, priorSigma)}`,
    ),
    ...fit.residuals.map(
      ({ tagId, rmsK, worstK, biasK }) =>
        `${names.get(tagId) ?? tagId}: ${rmsK.toFixed(1)} °C left, ${Math.abs(worstK).toFixed(1)} at worst; the bead reads about ${Math.abs(biasK).toFixed(1)} °C ${biasK < 0 ? 'low' : 'high'}.`,
    ),
    untold.length > 0 ? `The log could not tell: ${untold.join(', ')}.` : 'The log told something of every term.',
  ];
}
