/** Words of the stage Work map. */
export const workMapWords = {
  intro: 'One PDF that lies beside the microscope and stays with the ticket.',
  contents: 'The sheet will hold',
  open: 'To settle first',
  settled: 'Nothing is open.',
  save: 'Save work map',
  savePages: (format: string) => `Pages as ${format}`,
  saved: (name: string, pages: number) => `${name} saved, ${pages} ${pages === 1 ? 'page' : 'pages'}.`,
  lines: {
    header: (number: string) => `Header of ticket ${number}`,
    sites: (names: readonly string[]) => `Rework site ${names.join(', ')}: its surroundings enlarged, both sides`,
    board: 'The whole board, top and bottom seen from below',
    removals: (count: number) => (count === 1 ? '1 removal with its tray slot' : `${count} removals by tray slot`),
    shields: (count: number) => (count === 1 ? '1 shield' : `${count} shields`),
    exceptions: (count: number) => (count === 1 ? '1 exception' : `${count} exceptions`),
    runs: (names: readonly string[]) => `Heat runs ${names.join(', ')}: segments with set and outlet figures`,
    watch: (names: readonly string[]) => `Thermocouples ${names.join(', ')}: expected beside an empty 'actual'`,
    cautions: (count: number) => (count === 1 ? '1 caution that applies' : `${count} cautions that apply`),
    steps: (count: number) => (count === 1 ? '1 step with its box' : `${count} steps in order, with boxes`),
    signOff: 'Sign-off',
  },
  opens: {
    'no-site': 'No rework site is marked.',
    'no-figures': 'The heat is not worked out for the present plan.',
    suggestions: (count: number) => (count === 1 ? '1 suggestion is open.' : `${count} suggestions are open.`),
    cannot: (count: number) =>
      count === 1
        ? '1 part cannot be saved: decline, or quote its replacement.'
        : `${count} parts cannot be saved: decline, or quote their replacement.`,
    solid: (refdes: string) => `${refdes} does not melt in every run that should melt it.`,
    stop: (count: number) => (count === 1 ? '1 finding says stop.' : `${count} findings say stop.`),
    'no-technician': 'No technician is named.',
  },
} as const;
