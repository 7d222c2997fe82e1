/** Lines of the command line about steps. */
export const STEP_LINES = {
  count: (open: number, all: number) =>
    `${all} steps, ${open} open. Times and temperatures are estimates; data sheets, the shop's procedures and trained practice come first.`,
  stop: (words: string) => `Stop: ${words}`,
  fault: (words: string) => `! ${words}`,
  phase: (name: string) => `${name}`,
  step: (place: number, done: boolean, act: string) => `  ${done ? '[x]' : '[ ]'} ${place}. ${act}`,
  why: (words: string) => `        ${words}`,
  reading: (name: string, predicted: string, actual: string) =>
    `        ${name}: ${predicted ? `predicted ${predicted}` : 'to be noted'}${actual ? `, actual ${actual}` : ''}`,
  note: (words: string) => `        Note: ${words}`,
  source: (source: string, cautions: string) => `        (${source}${cautions ? `; cautions: ${cautions}` : ''})`,
  goneTitle: 'Ticked or noted, but no longer asked for by the plan',
  gone: (words: string) => `  ${words}`,
} as const;
