import type { ImportedFile, ImportedTable, ImportReport, PadCheck } from '../../../../shared-types/import-report.ts';
import type { Recognised } from '../files/recognise.ts';
import type { Archive } from '../files/unpack.ts';
import type { OutlineCandidate } from '../outline/choose.ts';
import type { RuleVote } from '../pads/turn.ts';
import type { PlacementTable } from '../placements/types.ts';
import { boxHeight, boxWidth, type Point } from '../plane.ts';
import type { PlacedMm, Registration } from '../register/register.ts';
import type { BillMerge } from './bills.ts';
import { boardNotes } from './board-notes.ts';
import type { FoundCover } from './covers.ts';
import { drawingNotes } from './drawing-notes.ts';
import type { DrawnOutline } from './drawings.ts';
import type { Frame } from './frame.ts';
import type { Layers } from './layers.ts';
import type { MergedPlacements } from './merge.ts';
import { archiveNotes, fileNotes, gerberNotes, tableNotes, turnSenseNote } from './notes.ts';
import type { BuiltPart } from './parts.ts';
import type { SoundContours } from './sound-contours.ts';
import { toldBy } from './told.ts';

export interface ReportInput {
  readonly files: readonly Recognised[];
  readonly archives: readonly Archive[];
  readonly tables: readonly PlacementTable[];
  /** y of the bottom was counted downwards and turned back. */
  readonly bottomYNegated: boolean;
  readonly bottomYChosen: boolean;
  readonly layers: Layers;
  readonly registration: Registration;
  /** The IPC-2581 file that the board was made from, alone. */
  readonly design: string | null;
  readonly drawn: readonly DrawnOutline[];
  readonly merged: MergedPlacements;
  readonly legend: readonly PlacedMm[];
  readonly panel: ImportReport['panel'];
  readonly billed: readonly BillMerge[];
  readonly frame: Frame;
  /** Other loops that may be chosen for the outline, also where the first one is damaged. */
  readonly otherOutlines: readonly OutlineCandidate[];
  readonly vote: RuleVote & { readonly from: 'pads' | 'columns' | 'none'; readonly chosen: boolean };
  /** Parts; what became a cover is none of them. */
  readonly built: readonly BuiltPart[];
  readonly found: readonly FoundCover[];
  readonly contours: SoundContours;
  readonly check: PadCheck | null;
}

const WEIGHTS = ['stop', 'warn', 'note'];

/** Everything the import did, for the report. */
export function makeReport(input: ReportInput): ImportReport {
  const { files, tables, registration, merged, frame, vote, contours } = input;
  const all = [...merged.placements, ...input.legend];
  const onSide = (side: string) => all.filter((placement) => placement.side === side).length;
  const unread = tables.flatMap(({ faults }) => faults.filter(({ fault }) => fault !== 'side' && fault !== 'rotation'));
  const notes = [
    ...archiveNotes(input.archives, files),
    ...fileNotes(files),
    ...files.flatMap((file) =>
      file.kind === 'layer' && input.layers.used.has(file.name) ? gerberNotes(file.name, file.image.notes) : [],
    ),
    ...tables.flatMap(tableNotes),
    ...turnSenseNote(vote.rule),
    ...drawingNotes(input.drawn),
    ...boardNotes(input),
  ];
  return {
    files: files.map(fileLine),
    tables: tables.map((table) => tableLine(table, registration)),
    drawings: input.drawn.map(({ file, unit, unitBy }) => ({ file, unit, unitBy })),
    counts: {
      top: onSide('top'),
      bottom: onSide('bottom'),
      inner: onSide('inner'),
      unread: unread.length,
      legend: input.legend.length,
    },
    outline: outlineLine(input, merged.placements.length === 0),
    offset: {
      xMm: frame.offset.x,
      yMm: frame.offset.y,
      by: frame.offset.by,
      votes: frame.offset.votes,
      of: frame.offset.of,
    },
    shift: { xMm: contours.shift.x, yMm: contours.shift.y },
    sense: {
      yNegated: input.bottomYNegated,
      xNegated: registration.bottomNegated,
      xBy: registration.bottomBy,
      top: vote.rule.top,
      bottom: vote.rule.bottom,
      turnsBy: vote.from,
      turnsChosen: vote.chosen,
      agreeing: Math.max(0, vote.agreeing),
      of: vote.of,
    },
    panel: input.panel,
    check: input.check,
    covers: [...input.found],
    told: toldBy(input),
    notes: notes.sort((a, b) => WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight)),
  };
}

/** What a file was taken for. */
export function fileLine(file: Recognised): ImportedFile {
  if (file.kind === 'placements') return { name: file.name, role: 'placements', by: 'content' };
  if (file.kind === 'bill') return { name: file.name, role: 'bill', by: 'content' };
  if (file.kind === 'netlist') return { name: file.name, role: 'netlist', by: 'content' };
  if (file.kind === 'design') return { name: file.name, role: 'design', by: 'content' };
  if (file.kind === 'drawing') return { name: file.name, role: file.drawing.format, by: 'content' };
  if (file.kind === 'layer') return { name: file.name, role: file.role, by: file.by };
  return { name: file.name, role: 'not-used', by: 'content' };
}

/** How a table was read. */
export function tableLine(
  table: PlacementTable,
  { assumedUnit, unitBy }: Pick<Registration, 'assumedUnit' | 'unitBy'>,
): ImportedTable {
  const { file, encoding, separator, headingLine, placements, unit, unitFrom, columnsChosen } = table;
  const guessed = unitBy === 'said' ? 'size' : unitBy;
  return {
    file,
    shape: table.shape,
    decimalComma: table.decimalComma,
    sideFrom: table.sideFrom,
    columns: table.columns.map(({ heading, meaning }) => ({
      heading: heading.slice(0, 80),
      meaning,
      by: columnsChosen ? 'chosen' : headingLine === null ? 'content' : 'heading',
    })),
    sample: table.sample.map((cells) => [...cells]),
    encoding,
    separator,
    headingLine,
    unit: unit ?? assumedUnit ?? 'mm',
    unitFrom: unitFrom === 'unknown' ? guessed : unitFrom,
    rows: placements.length,
    sideWords: table.sideWords.map((use) => ({ ...use })),
  };
}

function outlineLine(
  { frame: { choice }, contours: { box, cutouts, arcs }, otherOutlines }: ReportInput,
  noParts: boolean,
): ImportReport['outline'] {
  const percent = (share: number) => Math.round(share * 1000) / 10;
  return {
    file: choice?.outline.file ?? null,
    lengthMm: boxWidth(box),
    widthMm: boxHeight(box),
    cutouts: cutouts.length,
    arcs,
    why: noParts && choice?.why === 'smallest' ? 'pads' : (choice?.why ?? 'parts'),
    sharePercent: percent(choice?.share ?? 1),
    others: otherOutlines.map(({ loop, share, rank }) => ({
      rank,
      file: loop.file,
      lengthMm: boxWidth(loop.box),
      widthMm: boxHeight(loop.box),
      sharePercent: percent(share),
      polygon: thinned(loop.polygon),
    })),
  };
}

/** Corners enough for a small picture. */
const SHOWN_CORNERS = 120;

function thinned(polygon: readonly Point[]): [number, number][] {
  const step = Math.max(1, Math.ceil(polygon.length / SHOWN_CORNERS));
  return polygon.filter((_, index) => index % step === 0).map(({ x, y }) => [x, y]);
}
