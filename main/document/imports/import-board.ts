import { type Board, boardSchema } from '../../../shared-types/board.ts';
import { BOARD_FORMAT, BOARD_VERSION } from '../../../shared-types/format-version.ts';
import type { LengthWord, WindowImportChoices } from '../../../shared-types/import-choices.ts';
import type { ImportReport } from '../../../shared-types/import-report.ts';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import { boardFault } from '../../../shared-types/rules/board-faults.ts';

import { applyBills } from './build/bills.ts';
import { checkParts, turnSamples } from './build/check.ts';
import { claimsOf } from './build/claims.ts';
import type { BoardContour } from './build/contours.ts';
import { type Covers, splitCovers } from './build/covers.ts';
import { addDrawings, type DrawnOutline } from './build/drawings.ts';
import { type Frame, findFrame } from './build/frame.ts';
import { buildBodied, chooseStep, designLayers, registerDesign } from './build/from-design.ts';
import { registerNone, registerPads } from './build/from-pads.ts';
import { inputProblem } from './build/input-problem.ts';
import { laminateOf } from './build/laminate.ts';
import { gatherLayers, type Layers } from './build/layers.ts';
import { partLegend } from './build/legend.ts';
import { marksByPads, marksPlaced } from './build/marks.ts';
import { mergePlacements } from './build/merge.ts';
import { boardName, drawnFrom } from './build/naming.ts';
import { withPadSides } from './build/pad-sides.ts';
import { findPanel, type Panel, takeImages } from './build/panel.ts';
import { buildPart } from './build/parts.ts';
import { makeReport, type ReportInput } from './build/report.ts';
import { soundContours } from './build/sound-contours.ts';
import { type GivenFile, type Recognised, recognise } from './files/recognise.ts';
import { type Archive, unpackFiles } from './files/unpack.ts';
import { tidy } from './outline/contour.ts';
import { phaseGroups, voteTurnRule } from './pads/turn.ts';
import type { PlacementTable } from './placements/types.ts';
import { withBottomY } from './register/bottom-y.ts';
import { type PlacedMm, type Registration, register } from './register/register.ts';

export type { GivenFile } from './files/recognise.ts';

/** What a user may decide where the files leave it open. */
export interface ImportChoices extends WindowImportChoices {
  readonly name?: string;
  /** Unit of placement tables that do not say theirs; where they do or there are none, that of a drawing (DXF, SVG). */
  readonly unit?: LengthWord;
  /** Take millimetres where nothing tells the unit, and say so: for someone who can choose another then. Else that is a problem. */
  readonly unitMayBeChosen?: boolean;
}

export interface ImportedBoard {
  readonly board: Board;
  readonly report: ImportReport;
}

const MAX_FILES = 500;
const MAX_PARTS = 20_000;

/**
 * One board out of placement tables and Gerber layers, given in any order, loose or in a ZIP. Lengths come out in mm, x right, y up, seen from
 * the top, moved so that the outline's lower left is at 0, 0. Everything guessed, left out or odd stands in the report;
 * input that gives no board gives one problem. Pure and without exceptions.
 */
export function importBoard(files: readonly GivenFile[], choices: ImportChoices = {}): Result<ImportedBoard> {
  if (files.length > MAX_FILES) return fail('too-large', { detail: { limit: `${MAX_FILES} files` } });
  const unpacked = unpackFiles(files);
  if (!unpacked.ok) return unpacked;
  const recognised = unpacked.value.files.map((file) => recognise(file, choices));
  const given = recognised.flatMap((file) => (file.kind === 'placements' ? [file.table] : []));
  const rows = given.reduce((sum, { placements }) => sum + placements.length, 0);
  if (rows > MAX_PARTS) return fail('too-large', { file: given[0].file, detail: { limit: `${MAX_PARTS} parts` } });
  const { archives } = unpacked.value;
  const whole = fromDesign(recognised);
  if (whole)
    return build({ files: recognised, archives, tables: [], drawn: [], bottomYNegated: false, ...whole }, choices);
  const layers = gatherLayers(recognised);
  const { tables, bottomYNegated } = withBottomY(withPadSides(given, layers.pads), choices.bottomY);
  const placed = rows > 0 ? register(tables, layers, choices) : registerPads(layers.pads, '');
  const { drawn, ...found } = addDrawings(recognised, layers, placed?.placements ?? [], drawingUnit(tables, choices));
  const registration = rows > 0 ? placed : (placed ?? registerNone(found.layers));
  if (registration === null && rows === 0) return { ok: false, problem: inputProblem(recognised) };
  const unclear = fail('unclear-units', { file: tables.find((table) => table.mmPerUnit === null)?.file });
  if (registration === null) return unclear;
  const built = build(
    { files: recognised, archives, tables, bottomYNegated, ...found, registration, drawn, design: null },
    choices,
  );
  return !built.ok && registration.unitBy === 'none' ? unclear : built;
}

/** The unit that was chosen for drawings; one for all is the placements' where they do not say theirs, else the drawing's. */
function drawingUnit(tables: readonly PlacementTable[], choices: ImportChoices): LengthWord | undefined {
  const { drawingUnit: chosen, unit } = choices;
  if (chosen) return chosen;
  return tables.some(({ mmPerUnit, placements }) => mmPerUnit === null && placements.length > 0) ? undefined : unit;
}

/** An IPC-2581 file with parts tells everything by itself. */
function fromDesign(files: readonly Recognised[]): Pick<Gathered, 'layers' | 'registration' | 'design'> | null {
  for (const file of files) {
    const step = file.kind === 'design' ? chooseStep(file.design) : null;
    if (file.kind !== 'design' || step === null) continue;
    const layers = designLayers(file.design, step, file.name);
    return { layers, registration: registerDesign(file.design, step, file.name), design: file.name };
  }
  return null;
}

interface Gathered {
  readonly files: readonly Recognised[];
  readonly archives: readonly Archive[];
  readonly tables: readonly PlacementTable[];
  readonly bottomYNegated: boolean;
  readonly layers: Layers;
  readonly registration: Registration;
  readonly design: string | null;
  readonly drawn: readonly DrawnOutline[];
}

function build(gathered: Gathered, choices: ImportChoices): Result<ImportedBoard> {
  const { files, tables, layers, registration } = gathered;
  // Placements made out of the pads cannot be checked against them.
  const fromPads = registration.offset?.by === 'own';
  const bills = files.flatMap((file) => (file.kind === 'bill' ? [file.bill] : []));
  const { placements: parts, legend } = partLegend(registration.placements, layers.pads);
  const { placements, billed } = applyBills(parts, bills);
  const panel = findPanel(placements);
  const taken = takeImages(placements, panel, choices.panel ?? 'all');
  const merged = mergePlacements(taken.placements);
  const outside = merged.placements.filter(({ side }) => side !== 'inner');
  const found = frameOf(outside, gathered, choices);
  const turns = turnSamples(outside, fromPads ? new Map() : layers.pads);
  const chosen = choices.turn;
  const vote = { ...voteTurnRule(phaseGroups(turns.samples), chosen), from: turns.from, chosen: chosen !== undefined };
  const claimed = claimsOf(outside, layers, found.offset, vote.rule);
  const context = { pads: layers.pads, offset: found.offset, rule: vote.rule, claimed };
  const built = outside.map((placement) =>
    placement.body ? buildBodied(placement, placement.body) : buildPart(placement, context),
  );
  const contours = soundContours(
    found.choice,
    built.map(({ part }) => part),
  );
  const split = splitCovers(built, layers.pads, choices.covers);
  const frame = contours.outlineBroken ? { ...found, choice: null } : found;
  const board = assemble(files, layers, split, contours, choices);
  const parsed = boardSchema.safeParse(board);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return fail('invalid-field', {
      file: tables[0]?.file,
      where: issue.path.join('.'),
      detail: { reason: issue.message },
    });
  }
  const fault = boardFault(parsed.data);
  if (fault) return { ok: false, problem: { ...fault, file: frame.choice?.outline.file } };
  const check =
    layers.padLayer === null || fromPads
      ? null
      : checkParts({ built, pads: layers.pads, layer: layers.padLayer, rule: vote.rule });
  const report = makeReport({
    ...gathered,
    merged,
    legend,
    billed,
    panel: panelLine(panel, placements, taken, choices),
    frame,
    otherOutlines: found.choice?.others ?? [],
    bottomYChosen: choices.bottomY !== undefined,
    vote,
    built: split.parts,
    found: split.found,
    contours,
    check,
  });
  return succeed({ board: parsed.data, report });
}

/** Without parts the bare pads show which outline is the board's; layers have one origin. */
function frameOf(outside: readonly PlacedMm[], { layers, registration }: Gathered, choices: ImportChoices): Frame {
  if (outside.length > 0) return findFrame(layers.outlines, outside, registration.offset, choices);
  const pads = [...layers.unnamed.top, ...layers.unnamed.bottom];
  const still = { x: 0, y: 0, votes: 0, of: 0, by: 'own' as const };
  return findFrame(layers.outlines, pads, still, choices);
}

function panelLine(
  panel: Panel | null,
  all: readonly unknown[],
  { placements, strays }: ReturnType<typeof takeImages>,
  choices: ImportChoices,
): ReportInput['panel'] {
  if (panel === null) return null;
  const leftOut = all.length - placements.length;
  return { images: panel.images, taken: choices.panel ?? 'all', leftOut, strays: [...strays] };
}

function assemble(
  files: readonly Recognised[],
  layers: Layers,
  { parts: built, covers }: Covers,
  { outline, cutouts, shift }: BoardContour,
  choices: ImportChoices,
): Board {
  const shifted = <T extends { x: number; y: number }>(item: T): T => ({
    ...item,
    x: tidy(item.x + shift.x),
    y: tidy(item.y + shift.y),
  });
  const parts = built.map(({ part }) => shifted(part));
  const { name, revision } = boardName(files, choices.name);
  return {
    format: BOARD_FORMAT,
    version: BOARD_VERSION,
    name,
    revision,
    outline,
    cutouts,
    laminate: laminateOf(layers.copperLayers),
    parts,
    fiducials: [...marksPlaced(parts), ...marksByPads(layers, parts, shift)],
    covers: covers.map(shifted),
    photos: [],
    straps: [],
    packages: [],
    source: { drawnFrom: drawnFrom(files), licence: '', invented: false },
  };
}
