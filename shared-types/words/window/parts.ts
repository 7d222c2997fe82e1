const parts = (refdes: readonly string[]) => (refdes.length === 1 ? refdes[0] : `${refdes.length} parts`);
const mm = (value: number): string => String(Math.round(value * 100) / 100);

/** Names of undo steps that place, move and draw parts and covers, and sentences of the tools that do. */
export const partEditWords = {
  choosePackage: 'Choose a package first: press A and type one.',
  place: (refdes: string) => `place ${refdes}`,
  placeMany: (refdes: readonly string[]) => `place ${parts(refdes)}`,
  draw: (refdes: string) => `draw ${refdes}`,
  move: (refdes: readonly string[]) => `move ${parts(refdes)}`,
  turn: (refdes: readonly string[]) => `turn ${parts(refdes)}`,
  flip: (refdes: readonly string[]) => `put ${parts(refdes)} on the other side`,
  turnOver: (refdes: readonly string[]) => `turn ${parts(refdes)} over`,
  copy: (refdes: readonly string[]) => `copy ${parts(refdes)}`,
  remove: (refdes: readonly string[]) => `delete ${parts(refdes)}`,
  align: (refdes: readonly string[]) => `align ${parts(refdes)}`,
  distribute: (refdes: readonly string[]) => `space ${parts(refdes)} evenly`,
  rename: (from: string) => `rename ${from}`,
  package: (refdes: readonly string[]) => `change the package of ${parts(refdes)}`,
  height: (refdes: readonly string[]) => `set the height of ${parts(refdes)}`,
  pin1: (refdes: readonly string[]) => `mark pin 1 of ${parts(refdes)}`,
  ring: (target: string) => `ring round ${target}`,
  array: 'make an array',
  addCover: (id: string) => `draw ${id}`,
  cover: (id: string) => `edit ${id}`,
  removeCover: (id: string) => `delete ${id}`,
  liftCover: (id: string) => `lift ${id}`,
  drawnName: (lengthMm: number, widthMm: number) => `${mm(lengthMm)}x${mm(widthMm)} as drawn`,
  namedByStraps: (groups: readonly string[]) =>
    `The strap group ${groups.join(', ')} names a part of these. Take it out there first.`,
  boundToSide: (targets: readonly string[]) =>
    `${targets.join(', ')} ${targets.length === 1 ? 'is' : 'are'} the target of a rework site, which belongs to its side. Delete the site first.`,
} as const;

/** Words of placing parts in the stage Board. */
export const placeWords = {
  title: 'Place parts',
  package: 'Package',
  packageHint: '0402, BGA 17x17 0.8, 4.5x3.2x1.1',
  nothingFound: 'Nothing fits. Type a size, as 4.5x3.2x1.1.',
  size: (lengthMm: number, widthMm: number, heightMm: number | null) =>
    [lengthMm, widthMm, ...(heightMm === null ? [] : [heightMm])].map(mm).join(' × '),
  round: (diameterMm: number, heightMm: number | null) =>
    `ø ${[diameterMm, ...(heightMm === null ? [] : [heightMm])].map(mm).join(' × ')}`,
  from: { board: 'own', user: 'own', library: '', typed: 'as typed' },
  refdes: 'Designator',
  taken: (refdes: string, free: string) => `${refdes} is on the board already. ${free} is the next free one.`,
  value: 'Value',
  class: 'Class',
  classGuess: 'as the package says',
  height: 'Height',
  heightFrom: { typed: 'typed', package: 'of the package', class: 'by class' },
  turn: 'Turn',
  pin1: 'Pin 1',
  pin1None: 'not marked',
  pin1Ends: ['left end', 'right end'],
  pin1Corners: ['upper left', 'lower left', 'lower right', 'upper right'],
  empty: 'Empty position',
  coated: 'Coated board',
  grid: 'Grid',
  noGrid: 'none',
  rows: 'Snap to rows of neighbours',
  x: 'x',
  y: 'y',
  placeAt: (refdes: string) => `Place ${refdes}`,
  clickHint:
    'Click its middle, pull towards pin 1. Digits set the number, Shift goes on with the row, comma and period turn, G leaves it empty, F turns the board over.',
  tallHint: 'Tall: aim where it stands on the board. The photo shows its top elsewhere.',
  tools: 'Draw on the board',
  drawnTitle: 'Drawn body',
  drawnAs: (size: string) => `Drawn ${size} mm. Nearest packages:`,
  off: (errorMm: number) => (errorMm < 0.005 ? 'exact' : `${mm(errorMm)} mm off`),
  turned: 'turned',
  keepDrawn: 'Size as drawn',
} as const;

/** Keys and gestures that count only while parts are placed: what, and how. */
export const placeKeys = {
  title: 'While placing parts',
  lines: [
    ['Number of the designator', 'Digits, Backspace'],
    ['Mark pin 1, turn a part of two ends', 'Pull from its middle'],
    ['The same by 15° and whole degrees', 'Alt+pull'],
    ['Go on with the row to there', 'Shift+click'],
    ['Free of grid and rows', 'Alt+click'],
    ['Move the next part, put it there', 'Arrows, Enter'],
  ],
} as const;

/** Words of arranging parts, and of the sheets that ask for figures. */
export const arrangeWords = {
  title: 'Arrange',
  place: 'Place',
  side: 'Side',
  sides: { top: 'Top', bottom: 'Bottom', both: 'Both' },
  several: 'Several',
  apply: 'Set',
  heightTitle: (refdes: readonly string[]) => `Height of ${parts(refdes)}`,
  height: 'Height above the board',
  ringTitle: (target: string) => `Ring round ${target}`,
  ringText: (name: string) => `Of ${name}, with the designators that follow.`,
  noPackage: 'No package is chosen: type one here.',
  by: 'Given by',
  ways: { count: 'Count', pitch: 'Pitch' },
  count: 'Parts on each side',
  pitch: 'From one to the next',
  distance: 'Body to body',
  lies: 'Length lies',
  liesWays: { along: 'Along the edge', across: 'Across it' },
  onSides: 'On',
  makes: (count: number) => (count === 1 ? 'Place 1 part' : `Place ${count} parts`),
  arrayTitle: (refdes: readonly string[]) => `Array of ${parts(refdes)}`,
  columns: 'Columns',
  rowCount: 'Rows',
  pitchX: 'Pitch in x',
  pitchY: 'Pitch in y',
  arrayText:
    'What is selected stands first; the copies follow to the right and upwards with the next free designators.',
} as const;

/** Words of a can, a frame or a stiffener. */
export const coverWords = {
  title: 'Cover',
  draw: 'Draw',
  name: 'Name',
  taken: (id: string) => `${id} is taken.`,
  kind: 'Kind',
  length: 'Length',
  width: 'Width',
  height: 'Outer height',
  thickness: 'Thickness',
  sheet: 'Sheet',
  material: 'Material',
  materials: {
    'nickel-silver': 'Nickel silver',
    'tinned-steel': 'Tinned steel',
    aluminium: 'Aluminium',
    'stainless-steel': 'Stainless steel',
    copper: 'Copper',
  },
  fixing: 'Fixing',
  fixings: { soldered: 'Soldered', clipped: 'Clipped', screwed: 'Screwed', bonded: 'Bonded' },
  lift: 'Off before heat',
  remove: 'Delete',
} as const;

/** Words of packages that somebody measured. */
export const ownPackageWords = {
  title: 'Own packages',
  count: (board: number, user: number) => `${board} with the board, ${user} in your library`,
  homes: { board: 'board', user: 'library' },
  homeChoice: { board: 'With this board', user: 'In your library' },
  home: 'Kept',
  add: 'New package',
  edit: (name: string) => `Edit ${name}`,
  remove: (name: string) => `Delete ${name}`,
  keep: 'Keep package',
  keepFromPart: 'Keep as own package',
  name: 'Name',
  shape: 'Shape',
  shapes: { rectangle: 'Rectangle', round: 'Round' },
  length: 'Length',
  width: 'Width',
  diameter: 'Diameter',
  pins: 'Pins',
  pinsUnknown: 'unknown',
  keepStep: 'keep a package',
  removeStep: 'delete a package',
} as const;
