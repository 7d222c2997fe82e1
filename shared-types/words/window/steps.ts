/** Words of the stage Steps. */
export const stepStageWords = {
  none: 'Nothing to do yet: mark a site, tag a part, or choose a strap setting.',
  noFigures: 'Temperatures, bakes and neighbours that melt follow once the heat is worked out.',
  first: 'First of all',
  progress: (done: number, all: number) => (done === all ? 'all done' : `${done} of ${all}`),
  tick: (act: string) => `Done: ${act}`,
  by: 'Ticked by',
  at: 'When',
  now: 'now',
  tickedBy: 'By',
  tickedAt: 'At',
  note: 'Note',
  addNote: 'Add a note',
  why: 'Why',
  earlier: 'Move earlier',
  later: 'Move later',
  keys: 'Arrows go from step to step, Alt and arrows move one; Enter opens it, X ticks it.',
  moved: 'moved',
  movesBack: 'Put moved steps back',
  predicted: (words: string) => `predicted ${words}`,
  clock: 'm:ss',
  moreEarly: (count: number) =>
    count === 1
      ? '1 more step is ticked before what it waits for.'
      : `${count} more steps are ticked before what they wait for.`,
  add: 'Own step',
  addPhase: 'In',
  addWords: 'What is done',
  addButton: 'Add the step',
  ofSelection: (count: number) => (count === 1 ? 'about the selected part' : `about the ${count} selected parts`),
  removeOwn: 'Take this step out',
  gone: 'Ticked or noted, no longer asked for',
  forget: (words: string) => `Forget: ${words}`,
  alert: { stop: 'Stop', warn: 'Check' },
} as const;

/** Names of undo steps. */
export const stepEdits = {
  tick: 'tick a step',
  untick: 'take a tick off',
  reading: 'enter a reading',
  note: 'edit a note',
  who: 'edit who ticked a step',
  move: 'move a step',
  movesBack: 'put steps back',
  own: 'add a step',
  ownWords: 'edit a step',
  removeOwn: 'take a step out',
  forget: 'forget a tick',
  technician: 'edit ticket data: technician',
} as const;

export const stepActions = { tickNext: 'Tick the next step', showNext: 'Show the next step' } as const;
