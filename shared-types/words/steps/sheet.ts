/** Words of the printed steps. */
export const STEP_SHEET = {
  section: 'Steps, in order',
  place: '#',
  step: 'Step',
  predicted: 'predicted',
  actual: 'Actual',
  done: 'Done',
  cautions: (titles: string) => `Caution: ${titles}.`,
  alert: { stop: 'Stop: ', warn: 'Check: ' },
  ticked: (words: string) => `✓ ${words}`.trim(),
  gone: 'Ticked or noted, but no longer asked for by the plan',
  faults: 'What does not agree',
  sources: (words: string) => `Where no source is named: common practice. Sources: ${words}`,
} as const;
