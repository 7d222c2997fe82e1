import type { OpenedTicket, RequestOutput, TicketCard } from '../../shared-types/contract.ts';
import type { Assessment, HeatMoment } from '../../shared-types/evaluation.ts';
import type { Point, Side } from '../../shared-types/geometry.ts';
import type { WindowImportChoices } from '../../shared-types/import-choices.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Problem } from '../../shared-types/problem.ts';
import type { SearchAnswer } from '../../shared-types/profile-search.ts';
import { defaultSettings, type Settings } from '../../shared-types/settings.ts';
import type { FitProgress } from '../../shared-types/study.ts';
import { emptyHistory, type History } from '../editing/history.ts';
import { type Placing, startingPlacing } from '../editing/placing.ts';
import type { Pictures } from '../photos/shown-photos.ts';
import { type OutlineState, startingOutline } from '../tools/outline/outline-state.ts';
import type { CanvasModel, Pick, ToolName } from './canvas-model.ts';

/** The stages of the rail that work today. */
export const STAGES = ['board', 'photo', 'plan', 'heat', 'straps', 'steps', 'workMap'] as const;
export type Stage = (typeof STAGES)[number];

/** `changed`: not yet with main; `kept`: in the journal, survives a crash; `filed`: in the ticket's file. */
export type SaveState = { state: 'changed' | 'kept' | 'filed'; at: string | null };

export type TicketState = {
  id: string;
  fileName: string;
  document: TicketDocument;
  /** Revision that main holds. */
  revision: number;
  save: SaveState;
};

export type ShelfState = {
  folder: string;
  cards: readonly TicketCard[];
  samples: readonly TicketCard[];
  state: 'loading' | 'ready';
  problem: Problem | null;
};

export type Selection = {
  parts: ReadonlySet<string>;
  siteId: string | null;
  watchId: string | null;
  coverId: string | null;
};

export type Hover = { at: Point; temperatureC: number | null; pick: Pick | null };

export type ViewState = {
  stage: Stage;
  side: Side;
  tool: ToolName;
  placing: Placing;
  layers: CanvasModel['layers'];
  /** null: the worst over all heat runs. */
  shownRunId: string | null;
  /** Time in the shown heat run, s; null: the worst over time. */
  playS: number | null;
  playing: boolean;
  hover: Hover | null;
  zoom: number;
  panelOpen: boolean;
  /** Why a key did nothing; goes by itself. */
  hint: string | null;
  /** Photo and match pair being worked on in the stage Photo. */
  photoId: string | null;
  pairId: string | null;
  /** Photos are hidden for a moment. */
  blinked: boolean;
  outline: OutlineState;
};

export type EvaluationState = {
  assessment: Assessment | null;
  /** A run on its way; null: at rest. */
  running: { phase: 'coarse' | 'fine' | 'bands'; share: number } | null;
  /** The newest revision whose figures could differ from the shown ones. */
  wantedRevision: number;
  problem: Problem | null;
  /** Stopped by the user; the next edit starts again. */
  cancelled: boolean;
};

export type Notice = {
  id: number;
  weight: 'problem' | 'warn' | 'note';
  title: string;
  text: string;
};

/** The map of a moment, with the run and the evaluation that it is of. */
export type ShownMoment = HeatMoment & { runId: string; revision: number };

/** What files gave: a board, what is to be told about it, and what was chosen for it. */
export type Imported = {
  /** A new ticket is made of it, or the open one's board is brought up to it. */
  purpose: 'new' | 'update';
  files: readonly { name: string; bytes: Uint8Array<ArrayBuffer> }[];
  /** What each file was taken for, and the tables among them, board or not. */
  listed: RequestOutput<'import.read'>['files'];
  tables: RequestOutput<'import.read'>['tables'];
  /** null: nothing gave a board yet. */
  read: RequestOutput<'import.read'>['read'];
  choices: WindowImportChoices;
  /** The choices come from the last import of files of this kind. */
  remembered: boolean;
  /** Why the files, as they are read now, give no board; `read` is then from before. */
  problem: Problem | null;
  reading: boolean;
};
/** The same with a board. */
export type ImportedBoard = Imported & { read: NonNullable<Imported['read']> };

export type DialogName =
  | 'tall'
  | 'ring'
  | 'array'
  | 'new'
  | 'draw'
  | 'import'
  | 'update'
  | 'notes'
  | 'palette'
  | 'help'
  | 'settings'
  | 'calibrate';

export type AppState = {
  settings: Settings;
  systemDark: boolean;
  shelf: ShelfState;
  ticket: TicketState | null;
  history: History;
  /** A gesture on its way: its label and the document as it was at its begin. */
  gesture: { label: string; base: TicketDocument } | null;
  selection: Selection;
  view: ViewState;
  evaluation: EvaluationState;
  /** How far the calibration or search on its way is; null: none. */
  study: { about: 'calibration' | 'search'; share: number; fit?: FitProgress } | null;
  /** What the last search of this ticket found, and the document that it was about. */
  search: { answer: SearchAnswer; document: TicketDocument } | null;
  /** The last map of a moment that came. */
  moment: ShownMoment | null;
  notices: readonly Notice[];
  dialog: DialogName | null;
  /** What the last import found, shown before a ticket is made of it. */
  imported: Imported | null;
  /** What the import had to say of a drawing that was opened as a ticket at once. */
  openedNotes: NonNullable<OpenedTicket['notes']>;
  menu: { pick: Pick | null; page: Point } | null;
  /** A ticket is being opened or made. */
  busy: boolean;
  /** Decoded pictures of the ticket's photos. */
  pictures: Pictures;
  /** Names of photos that are being read. */
  photosComing: readonly string[];
};

export const nothingSelected: Selection = { parts: new Set(), siteId: null, watchId: null, coverId: null };

export const startingView: ViewState = {
  stage: 'plan',
  side: 'top',
  tool: 'select',
  placing: startingPlacing,
  layers: { heat: true, isotherms: true, rings: true, labels: true },
  shownRunId: null,
  playS: null,
  playing: false,
  hover: null,
  zoom: 0,
  panelOpen: true,
  hint: null,
  photoId: null,
  pairId: null,
  blinked: false,
  outline: startingOutline,
};

export const noEvaluation: EvaluationState = {
  assessment: null,
  running: null,
  wantedRevision: 0,
  problem: null,
  cancelled: false,
};

export function startingState(): AppState {
  return {
    settings: defaultSettings,
    systemDark: false,
    shelf: { folder: '', cards: [], samples: [], state: 'loading', problem: null },
    ticket: null,
    history: emptyHistory,
    gesture: null,
    selection: nothingSelected,
    view: startingView,
    evaluation: noEvaluation,
    study: null,
    search: null,
    moment: null,
    notices: [],
    dialog: null,
    imported: null,
    openedNotes: [],
    menu: null,
    busy: false,
    pictures: new Map(),
    photosComing: [],
  };
}
