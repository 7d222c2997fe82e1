/** What the command line says, other than problems. */
export const USAGE = `heatmargin: plans board-level rework. It estimates; data sheets, local rules and trained practice come first.

  heatmargin check FILE                       check a board, plan or ticket file
  heatmargin import FILES OR FOLDERS... -o NAME.board.json [--name TEXT] [--unit UNIT] [--drawing-unit UNIT]
             [--bottom-x top|negated] [--bottom-y top|negated] [--offset=X,Y] [--outline RANK] [--panel all|one]
             [--side WORD=top|bottom|inner ...] [--cover REF=can|frame|part ...]
                                              drawing files, loose or in a ZIP, to one board: placements (text, XLSX, ODS),
                                              Gerber layers, IPC-2581, IPC-D-356, bill of materials, DXF, SVG
  heatmargin export board|placements|exposures TICKET -o FILE [--coarse]
                                              the board as JSON, or a table as CSV; a board file does for the first two
  heatmargin ticket BOARD -o X.hmticket --site REF [--site REF ...] [--profile FILE] [--number TEXT]
                                              a ticket with a rework site at each part
  heatmargin update-board TICKET FILES OR FOLDERS... -o OUT.hmticket|--show [options of import]
             [--move=X,Y] [--turn 0|90|180|270] [--mirror] [--over] [--take KIND[=REF] ...] [--leave KIND[=REF] ...]
             [--stay REF ...] [--same REF=NAME ...] [--renamed OLD=NEW ...]
                                              the board of a ticket brought up to newer files: says what changes;
                                              what the plan says of parts that stay is kept
  heatmargin evaluate TICKET [--json] [--coarse]
                                              exposure of every part, advice and findings
  heatmargin straps FILE [--want GROUP=SETTING ...] [--stock-first] [--json]
                                              what the straps of a board or ticket say, and the moves to the wanted setting
  heatmargin steps TICKET [--json] [--coarse]  the work in order: what is done, read and checked, with reasons
  heatmargin search TICKET [--run NAME] [--preheater C-C] [--lead S-S] [--gas C-C] [--seconds S-S] [--to-peak S] [--json]
  heatmargin calibrate TICKET [LOG.csv] -o OUT.hmticket [--run NAME] [--start SECONDS]
             --point WATCH=COLUMN,soldered|epoxy|taped ... --peak WATCH=CELSIUS,soldered|epoxy|taped ...
                                              fits the station to a logged run on a scrap board; later evaluations
                                              of the ticket go by it
  heatmargin work-map TICKET -o OUT.pdf [--unit mm|mil] [--degrees C|F]
                                              the sheet that lies beside the microscope
  heatmargin work-map TICKET -o OUT.svg|OUT.png [--page N] [--dpi 200]
                                              its pages as pictures, OUT-01.svg and so on, or one page alone
  heatmargin schema board|plan|profile        JSON Schema (2020-12) of a format
  heatmargin example heat CASE.json [--cell MM] [--step SECONDS] [--json]
                                              runs a bare heat case

'heatmargin COMMAND --help' tells what the options of a command do.
Exit status: 0 ok, 1 a problem in the input (one line on standard error), 2 wrong use.`;

export const wrongUse = (what: string): string => `${what} Run 'heatmargin --help' for the commands.`;
export const unknownCommand = (name: string): string => wrongUse(`There is no command '${name}'.`);
export const fileIsFine = (file: string, kind: string, facts: string): string => `${file}: a valid ${kind}. ${facts}`;
export const written = (file: string, facts: string): string => `${file} written: ${facts}`;

export const boardFacts = (facts: {
  top: number;
  bottom: number;
  empty: number;
  cutouts: number;
  length: number;
  width: number;
}): string =>
  `${facts.length.toFixed(1)} x ${facts.width.toFixed(1)} mm, ${facts.top} parts on top, ${facts.bottom} on the bottom` +
  `${facts.empty ? `, ${facts.empty} positions empty` : ''}, ${facts.cutouts} ${facts.cutouts === 1 ? 'cutout' : 'cutouts'}.`;

export const planFacts = (facts: { number: string; sites: number; runs: number; tags: number }): string =>
  `Ticket ${facts.number}: ${facts.sites} ${facts.sites === 1 ? 'site' : 'sites'}, ${facts.runs} heat runs, ${facts.tags} tags.`;

export const unknownOption = (option: string): string => `There is no option '${option}' here.`;
export const missingValue = (options: readonly string[]): string =>
  `${options.join(' or ') || 'An option'} needs a value (one that begins with - is written --name=-1), or takes none.`;

/** Words about writing the sheet. */
export const sheetWords = {
  output: 'Name the sheet to write with -o NAME.pdf, -o NAME.svg or -o NAME.png.',
  date: '--date takes a date such as 2026-11-25.',
  units: '--unit takes mm or mil, --degrees takes C or F.',
  page: '--page takes the number of a page to save as SVG or PNG.',
  dpi: ({ least, most }: { least: number; most: number }) => `--dpi takes dots per inch from ${least} to ${most}.`,
  noPage: (page: number) => `The sheet has no page ${page}.`,
  facts: (pages: number, bytes: number) => `${pages} ${pages === 1 ? 'page' : 'pages'}, ${Math.ceil(bytes / 1024)} kB.`,
};
