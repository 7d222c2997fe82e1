/** Words of the start page: the ticket shelf, new tickets, import. */
const count = (number: number, one: string, many: string) => `${number} ${number === 1 ? one : many}`;

export const startWords = {
  title: 'Ticket shelf',
  newTicket: 'New ticket',
  importFiles: 'Import',
  drawBoard: 'Draw a board',
  samples: 'Samples',
  samplesText: 'Invented boards to try things on. Opening one puts a copy on your shelf.',
  invented: 'Invented',
  emptyTitle: 'The shelf is empty.',
  emptyText: 'Start from a sample, or import placements and Gerber files. Dropping them here does.',
  loading: 'Reading the shelf',
  noTarget: 'no site yet',
  target: (refdes: string) => `target ${refdes}`,
  counts: (counts: { parts: number; sites: number; tags: number; heatRuns: number }) =>
    [
      count(counts.parts, 'part', 'parts'),
      ...(counts.sites > 0 ? [count(counts.sites, 'site', 'sites')] : []),
      ...(counts.tags > 0 ? [count(counts.tags, 'tag', 'tags')] : []),
    ].join(' · '),
  openTicket: (number: string) => `Open ticket ${number}`,
  takeSample: (name: string) => `Start a ticket from the sample ${name}`,
  more: (number: string) => `More for ${number}`,
  versions: 'Earlier versions',
  remove: 'Delete',
  removeTitle: (number: string) => `Delete ticket ${number}?`,
  removeText: 'Its file leaves the shelf folder. This cannot be undone here.',
  removeDo: 'Delete the ticket',
} as const;

const inDigits = { hour: '2-digit', minute: '2-digit' } as const;
const withWeekday = { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' } as const;

export const versionsWords = {
  title: (name: string) => `Earlier versions of ${name}`,
  text: 'Kept before the file was replaced, one in ten minutes at most. One that is opened becomes a ticket of its own; the present one stays as it is.',
  list: 'Earlier versions',
  none: 'None are kept yet.',
  moment: (at: Date) => ({
    day: at.toLocaleDateString('en-GB', withWeekday),
    time: at.toLocaleTimeString('en-GB', inDigits),
  }),
  open: 'Open',
  openOne: (day: string, time: string) => `Open the version of ${day}, ${time}`,
} as const;

export const newTicketWords = {
  title: 'New ticket',
  number: 'Ticket number',
  from: 'Board',
  ways: { files: 'From files', sample: 'From a sample', empty: 'To be drawn' },
  filesText: 'Placements and Gerber layers, a .board.json or a ticket. Choose all files of the board together.',
  chooseFiles: 'Choose files',
  boardName: 'Board name',
  length: 'Length',
  width: 'Width',
  measure: 'measure',
  cornerRadius: 'Corner radius',
  sample: 'Sample',
  create: 'Create ticket',
  noSamples: 'No samples were found.',
} as const;

export const importWords = {
  title: 'Import',
  found: 'Found',
  parts: (top: number, bottom: number) => `${top} top, ${bottom} bottom`,
  partsLabel: 'Parts',
  size: 'Outline',
  cutouts: 'Cutouts',
  layers: 'Copper layers',
  guessed: 'Classes guessed',
  notes: 'Notes',
  notesTitle: 'What the import found',
  notesDone: 'Go on',
  noNotes: 'Nothing to note.',
  weights: { stop: 'Stop', warn: 'Check', note: 'Note' },
  boardName: 'Board name',
  create: 'Create ticket',
  partsNamed: (refdes: readonly string[]) =>
    refdes.length <= 12 ? refdes.join(' ') : `${refdes.slice(0, 12).join(' ')} and ${refdes.length - 12} more`,
} as const;
