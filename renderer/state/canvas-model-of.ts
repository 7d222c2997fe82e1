import { emptyBoard } from '../../shared-types/board.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { emptyPlan } from '../../shared-types/rules/new-plan.ts';
import { chosenPhoto } from '../photos/chosen-photo.ts';
import type { AppState } from './app-state.ts';
import type { CanvasModel } from './canvas-model.ts';
import { isStale } from './evaluation-inbox.ts';
import { momentShown } from './playback.ts';

/** What a canvas gets before a ticket is open. */
export const noDocument: TicketDocument = { board: emptyBoard('-', 1, 1), plan: emptyPlan('-') };

export const isDark = (state: AppState): boolean =>
  state.settings.theme === 'dark' || (state.settings.theme === 'system' && state.systemDark);

const withoutHeatOf = new WeakMap<CanvasModel['layers'], CanvasModel['layers']>();

/** While photos are laid they are not covered by the heat map. The same layers give the same object: see `sameModel`. */
function withoutHeat(layers: CanvasModel['layers']): CanvasModel['layers'] {
  const known = withoutHeatOf.get(layers) ?? { ...layers, heat: false, isotherms: false };
  withoutHeatOf.set(layers, known);
  return known;
}

/** Everything the canvas draws, out of the window's state. */
export function canvasModelOf(state: AppState): CanvasModel {
  const document = state.ticket?.document ?? noDocument;
  const { view, selection, evaluation } = state;
  const runId = document.plan.heatRuns.some((run) => run.id === view.shownRunId) ? view.shownRunId : null;
  return {
    document,
    assessment: evaluation.assessment,
    stale: isStale(evaluation),
    moment: momentShown(state),
    selection: selection.parts,
    selectedSiteId: selection.siteId,
    selectedWatchId: selection.watchId,
    selectedCoverId: selection.coverId,
    boardOpen: view.stage === 'board',
    placing: view.placing,
    shownSide: view.side,
    viewTurnDeg: document.plan.clampedTurnDeg,
    theme: isDark(state) ? 'dark' : 'light',
    temperatureUnit: state.settings.temperatureUnit,
    lengthUnit: state.settings.lengthUnit,
    wheelDoes: state.settings.wheelDoes,
    layers: view.stage === 'photo' ? withoutHeat(view.layers) : view.layers,
    shownRunId: runId,
    tool: view.tool,
    pictures: state.pictures,
    blinked: view.blinked,
    photoId: view.stage === 'photo' ? (chosenPhoto(document.board.photos, view.side, view.photoId)?.id ?? null) : null,
    pairId: view.pairId,
    outline: view.outline,
  };
}

/** True when both models show the same; compared field by field, the parts of the layers too. */
export function sameModel(a: CanvasModel, b: CanvasModel): boolean {
  const names = Object.keys(a) as (keyof CanvasModel)[];
  return names.every((name) => Object.is(a[name], b[name]));
}
