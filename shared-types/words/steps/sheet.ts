/** Words of the printed steps. */
export const STEP_SHEET = {
  section: 'Steps, in order',
  goesOn: 'Steps from power-off to hand back',
  place: '#',
  step: 'Step',
  predicted: 'Predicted',
  actual: 'Actual',
  done: 'Done',
  cautions: (titles: string) => `Caution: ${titles}.`,
  alert: { stop: 'Stop: ', warn: 'Check: ' },
  onRunSheet: 'on its sheet',
  ticked: (words: string) => `✓ ${words}`.trim(),
  gone: 'Ticked or noted, but no longer asked for by the plan',
  faults: 'What does not agree',
  lines: 'Date, name and signature for the whole',
  sources: (words: string) => `Where no source is named: common practice. Sources: ${words}`,
} as const;
