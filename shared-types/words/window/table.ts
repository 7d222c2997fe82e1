import type { PartState } from '../../evaluation.ts';

/** How a part fares, in a word. */
export const partStateWords: Record<PartState | 'reflow', string> = {
  clear: 'Clear',
  unsure: 'Unsure',
  over: 'Over limit',
  reflow: 'Will reflow',
};

export const tableWords = {
  title: 'Parts',
  open: 'Open the parts table',
  close: 'Close the parts table',
  filter: 'Filter',
  filterHint: 'Designator, class, value',
  show: 'Show',
  chips: {
    exceptions: 'Exceptions',
    over: 'Over or unsure',
    reflow: 'Will reflow',
    remove: 'Remove',
    shield: 'Shield',
    all: 'All',
  },
  columns: {
    refdes: 'Part',
    side: 'Side',
    class: 'Class',
    clearance: 'Clearance',
    body: 'Body',
    skin: 'Skin',
    joint: 'Joint',
    limit: 'Limit',
    margin: 'Margin',
    state: 'State',
    action: 'Action',
    tag: 'Tags',
  },
  sides: { top: 'Top', bottom: 'Bottom' },
  selected: (count: number) => `${count} selected`,
  shown: (count: number, all: number) => `${count} of ${all}`,
  ordinary: (count: number, reflow: number) =>
    `${count} ordinary ${count === 1 ? 'part' : 'parts'}: leave${reflow > 0 ? `, ${reflow} of them will reflow` : ''}`,
  showOrdinary: 'Show them',
  noMatch: 'No part fits the filter.',
  noExceptions: 'No exceptions: every part stays within its limits.',
  notFigured: 'No figures yet. The parts are listed by designator.',
  partsNoFigures: (count: number) => `${count} parts`,
  guessed: 'Class guessed',
  notEvaluated: {
    'off-board': 'Not on the board',
    'not-fitted': 'Empty position',
    removed: 'Off before heat',
  },
} as const;
