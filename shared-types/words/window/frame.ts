import { photoWords } from './photo.ts';

/** Words of the window's frame: top bar, rail, panel, status line, dialogues. */
export const frameWords = {
  program: 'Heatmargin',
  close: 'Close',
  cancel: 'Cancel',
  recoveredTitle: 'Changes from before the crash were taken over.',
  recoveredText: 'Look them over; undo does not reach behind this point.',
  shelf: 'Ticket shelf',
  save: { changed: 'Saving', kept: 'Kept', filed: 'Saved' },
  savedTip: {
    changed: 'The last change is on its way to the disk.',
    kept: 'Every change is in the journal and survives a crash. The ticket file follows when you pause.',
    filed: 'The ticket file holds everything.',
  },
  printMap: 'Work map',
  printing: 'Drawing the sheet',
  findPart: 'Find part',
  nothingFound: 'No part of that name',
  side: 'Side shown',
  top: 'Top',
  bottom: 'Bottom',
  tools: 'Tools',
  stages: 'Stages',
  panel: 'Stage panel',
  panelWidth: 'Width of the stage panel',
  hidePanel: 'Hide panel',
  showPanel: 'Show panel',
  offBoard: 'Pointer off the board',
  noBand: 'band not computed yet',
  zoom: 'zoom',
  cancelEvaluation: 'Stop',
  computing: { coarse: 'Coarse map', fine: 'Fine map', bands: 'Bands' },
  stale: 'Figures of the plan before the last change',
  noFigures: 'No figures yet',
  waiting: 'Working out what the heat reaches',
  stopped: 'Stopped. The figures are those from before.',
  runAgain: 'Work it out',
  canvas: 'Drawing of the board',
  notices: 'Notices',
  dismiss: 'Dismiss',
  dropHere: 'Drop to import',
  dropText: 'Tickets, boards, placements with Gerber, photos of the open board',
  connectionLost: 'The program behind this window no longer answers.',
  connectionText: 'Everything up to the last saved moment is on disk. Start the program again.',
} as const;

export const stageNames = {
  board: 'Board',
  photo: 'Photo',
  plan: 'Plan',
  heat: 'Heat',
  straps: 'Straps',
  steps: 'Steps',
  workMap: 'Work map',
} as const;

/** What is open in a stage, said for a count. */
export const stageOpen = {
  board: (count: number) =>
    count === 1 ? '1 thing of the board to look at' : `${count} things of the board to look at`,
  photo: photoWords.open,
  plan: (count: number) => (count === 1 ? '1 suggestion open' : `${count} suggestions open`),
  heat: (count: number) => (count === 1 ? '1 part over or unsure' : `${count} parts over or unsure`),
  straps: (count: number) => (count === 1 ? '1 strap move or refusal open' : `${count} strap moves or refusals open`),
  steps: (count: number) => (count === 1 ? '1 step open' : `${count} steps open`),
  workMap: (count: number) => (count === 1 ? '1 thing to settle first' : `${count} things to settle first`),
} as const;

export const settingsWords = {
  title: 'Settings',
  theme: 'Theme',
  themes: { system: 'As the system', light: 'Light', dark: 'Dark' },
  temperature: 'Temperatures',
  length: 'Lengths',
  wheel: 'Wheel over the drawing',
  wheelDoes: { zoom: 'Zooms', pan: 'Pans' },
  technician: 'Technician on new tickets',
  shelfFolder: 'Ticket shelf',
  version: 'Version',
  drawnWith: 'Drawn with',
  shells: { electron: 'desktop shell', local: 'local shell' },
} as const;

export const helpWords = {
  title: 'Keys',
  palette: 'Commands',
  paletteHint: 'Type what you want to do',
  nothing: 'No command of that name',
  wheel: {
    zoom: [['Wheel', 'Zoom at the pointer']],
    pan: [
      ['Wheel, with Shift sideways', 'Pan'],
      ['Ctrl and wheel', 'Zoom at the pointer'],
    ],
  },
  mouse: [
    ['Space and drag, middle button', 'Pan'],
    ['Click, Shift and click', 'Select, add to the selection'],
    ['Drag on empty board', 'Select what the frame holds'],
    ['Right button', 'Menu of what lies under the pointer'],
  ],
  mouseTitle: 'Pointer',
} as const;
