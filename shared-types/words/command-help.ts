import { USAGE } from './command-line.ts';

/** How drawing files are to be read: `import` and `update-board`. */
const READING: readonly (readonly [option: string, what: string])[] = [
  ['--name TEXT', "the board's name; else what the files call it"],
  ['--unit UNIT', 'mm, mil, inch, um or cm, for placements that do not say theirs, else for drawings'],
  ['--drawing-unit UNIT', 'the unit of DXF and SVG drawings, whatever they say'],
  ['--bottom-x top|negated', 'x of bottom parts as seen from the top, or negated; else told by pads or signs'],
  ['--bottom-y top|negated', 'the same for y'],
  ['--offset=X,Y', 'millimetres from the origin of the placements to that of the Gerber layers'],
  ['--outline RANK', 'another outline, by its number in the report of an earlier import'],
  ['--panel all|one', 'of a panel whose boards share references: all of them, or the first'],
  ['--side WORD=MEANING', 'what a word of the side column means: top, bottom or inner; may be given several times'],
  ['--cover REF=KIND', 'what a shield is: can, frame or part; may be given several times'],
];

/** What the options of each command do, one line each. */
const OPTIONS: Readonly<Record<string, readonly (readonly [option: string, what: string])[]>> = {
  check: [],
  import: [['-o, --output FILE', 'the board to write, NAME.board.json'], ...READING],
  'update-board': [
    ['-o, --output FILE', 'the ticket to write'],
    ['--show', 'say what would change, write nothing'],
    ...READING,
    ['--move=X,Y', 'millimetres from the files to the board of the ticket; else by a vote over common designators'],
    ['--turn 0|90|180|270', 'degrees by which the drawing of the files lies turned'],
    ['--mirror', 'the drawing of the files is mirrored'],
    ['--over', 'its other side lies up'],
    ['--take KIND[=REF]', 'a kind of change to take, of all parts or of one; may be given several times'],
    ['--leave KIND[=REF]', 'a kind of change to leave; may be given several times'],
    ['--stay REF', 'a part that the files lack, and that stays; may be given several times'],
    ['--same REF=NAME', 'which of several alike in the files is the part; may be given several times'],
    ['--renamed OLD=NEW', 'a part that has another designator in the files; may be given several times'],
  ],
  export: [
    ['-o, --output FILE', 'the file to write'],
    ['--coarse', 'exposures: with the quick map of 2 mm cells'],
  ],
  ticket: [
    ['-o, --output FILE', 'the ticket to write, X.hmticket'],
    ['--site REF', 'a part that comes off; may be given several times'],
    ['--profile FILE', 'the heat profile to begin with'],
    ['--number TEXT', "the ticket's number"],
  ],
  evaluate: [
    ['--json', 'everything as JSON'],
    ['--coarse', 'with the quick map of 2 mm cells'],
  ],
  straps: [
    ['--want GROUP=SETTING', 'the setting that is wanted; may be given several times'],
    ['--stock-first', 'take parts of the stock before those that come free'],
    ['--json', 'everything as JSON'],
  ],
  steps: [
    ['--json', 'everything as JSON'],
    ['--coarse', 'with the quick map of 2 mm cells'],
  ],
  search: [
    ['--run NAME', 'the heat run, by its name; else the first with gas'],
    ['--preheater C-C', 'the range of the preheater in degrees Celsius'],
    ['--lead S-S', 'the range of seconds before the gas'],
    ['--gas C-C', 'the range of the gas in degrees Celsius'],
    ['--seconds S-S', 'the range of seconds of gas'],
    ['--to-peak S', 'seconds from the start to the end of the gas, at most'],
    ['--json', 'everything as JSON'],
  ],
  calibrate: [
    ['-o, --output FILE', 'the ticket to write, with the station fitted'],
    ['--run NAME', 'the heat run that was logged; else the first'],
    ['--start SECONDS', "where the run begins in the log's own time"],
    [
      '--point WATCH=COLUMN,HOW',
      'a bead of the log at a watch point, soldered, epoxy or taped; may be given several times',
    ],
    ['--peak WATCH=CELSIUS,HOW', 'the highest reading at a watch point, without a log'],
  ],
  'work-map': [
    ['-o, --output FILE', 'the sheet to write: .pdf, .svg or .png'],
    ['--page N', 'one page alone, for .svg and .png'],
    ['--dpi N', 'dots per inch of .png'],
    ['--degrees C|F', 'what temperatures are printed in'],
    ['--unit mm|mil', 'what lengths are printed in'],
    ['--date DATE', 'the date on the sheet, such as 2026-11-25'],
    ['--coarse', 'with the quick map of 2 mm cells'],
  ],
  schema: [],
  example: [
    ['--cell MM', 'size of the cells, 0.1 to 50'],
    ['--step SECONDS', 'time step, 0.001 to 60'],
    ['--json', 'everything as JSON'],
  ],
};

/** Help of one command: its lines of the overview and its options. Null: there is no such command. */
export function commandHelp(name: string): string | null {
  const options = Object.hasOwn(OPTIONS, name) ? OPTIONS[name] : null;
  if (!options) return null;
  const start = new RegExp(`^ {2}heatmargin ${name}\\b`);
  let own = false;
  const use = USAGE.split('\n').filter((line) => {
    if (/^ {2}heatmargin /.test(line)) own = start.test(line);
    else if (!line.startsWith('   ')) own = false;
    return own;
  });
  const width = Math.max(0, ...options.map(([option]) => option.length));
  const lines = options.map(([option, what]) => `  ${option.padEnd(width)}  ${what}`);
  return [...use, ...(lines.length > 0 ? ['', 'Options:', ...lines] : [])].join('\n');
}
