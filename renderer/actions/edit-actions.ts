import { Redo2, Undo2 } from 'lucide-react';
import { suggestionsOf } from '../../shared-types/rules/suggestions.ts';
import { actionLabels as labels } from '../../shared-types/words/window/actions.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { confirmClass } from '../editing/parts.ts';
import { removeSite } from '../editing/sites.ts';
import { takeSuggestions } from '../editing/suggestions.ts';
import { clearTags, removeTagsById, tagsOf } from '../editing/tags.ts';
import type { App } from '../state/app.ts';
import type { AppState } from '../state/app-state.ts';
import { type Action, hasParts, hasTicket } from './action.ts';
import { deleteFromBoard, deletesFromBoard } from './board-actions.ts';

export const editActions: readonly Action[] = [
  {
    id: 'undo',
    group: 'edit',
    label: labels.undo,
    keys: ['Ctrl+Z'],
    icon: Undo2,
    enabled: (state) => state.history.done.length > 0 || state.gesture !== null,
    run: (app) => app.bench.undo(),
  },
  {
    id: 'redo',
    group: 'edit',
    label: labels.redo,
    keys: ['Ctrl+Y', 'Ctrl+Shift+Z'],
    icon: Redo2,
    enabled: (state) => state.history.undone.length > 0,
    run: (app) => app.bench.redo(),
  },
  {
    id: 'select-all',
    group: 'edit',
    label: labels.selectAll,
    keys: ['Ctrl+A'],
    enabled: hasTicket,
    run: selectAll,
  },
  {
    id: 'clear-selection',
    group: 'edit',
    label: labels.clearSelection,
    keys: ['Escape'],
    enabled: hasTicket,
    run(app) {
      if (app.store.get().view.tool !== 'select') app.setView({ tool: 'select' });
      else app.bench.clearSelection();
    },
  },
  {
    id: 'delete',
    group: 'edit',
    label: labels.remove,
    keys: ['Delete', 'Backspace'],
    enabled: canDelete,
    run: deleteSelected,
  },
  {
    id: 'take-all',
    group: 'edit',
    label: labels.takeSuggestions,
    keys: [],
    enabled: (state) => openSuggestions(state).length > 0,
    run(app) {
      const open = openSuggestions(app.store.get());
      app.bench.apply(editLabels.suggestion, (document) => takeSuggestions(document, open));
    },
  },
  {
    id: 'take-selected',
    group: 'edit',
    label: labels.takeForSelection,
    keys: ['Enter'],
    enabled: (state) => suggestionsForSelection(state).length > 0,
    run(app) {
      const open = suggestionsForSelection(app.store.get());
      app.bench.apply(editLabels.suggestion, (document) => takeSuggestions(document, open));
    },
  },
  {
    id: 'confirm-class',
    group: 'edit',
    label: labels.confirmClasses,
    keys: ['K'],
    enabled: (state) => hasParts(state) && guessedOfSelection(state).length > 0,
    run(app) {
      const refdes = guessedOfSelection(app.store.get());
      app.bench.apply(editLabels.classes(refdes), (document) => confirmClass(document, refdes));
    },
  },
];

/** Suggestions of the shown assessment that the plan does not carry yet. */
export function openSuggestions(state: AppState) {
  const { assessment } = state.evaluation;
  return assessment && state.ticket ? suggestionsOf(assessment, state.ticket.document.plan) : [];
}

const suggestionsForSelection = (state: AppState) =>
  openSuggestions(state).filter((suggestion) => state.selection.parts.has(suggestion.refdes));

const guessedOfSelection = (state: AppState): string[] =>
  (state.ticket?.document.board.parts ?? [])
    .filter((part) => part.classGuessed && state.selection.parts.has(part.refdes))
    .map((part) => part.refdes);

function selectAll(app: App): void {
  const { ticket, view } = app.store.get();
  const parts = ticket?.document.board.parts.filter((part) => part.side === view.side) ?? [];
  app.bench.select(
    parts.map((part) => ({ kind: 'part', refdes: part.refdes })),
    'replace',
  );
}

function canDelete(state: AppState): boolean {
  const { ticket, selection } = state;
  if (!ticket) return false;
  if (deletesFromBoard(state)) return true;
  if (selection.siteId || selection.watchId) return true;
  return [...selection.parts].some((refdes) => tagsOf(ticket.document, refdes).length > 0);
}

/** What is picked most precisely goes first: a thermocouple, a site, then the tags of the parts. */
function deleteSelected(app: App): void {
  const { siteId, watchId, parts } = app.store.get().selection;
  if (deletesFromBoard(app.store.get())) deleteFromBoard(app);
  else if (watchId) app.bench.apply(editLabels.removeWatch, (document) => removeTagsById(document, [watchId]));
  else if (siteId) app.bench.apply(editLabels.removeSite, (document) => removeSite(document, siteId));
  else app.bench.apply(editLabels.clearTags([...parts]), (document) => clearTags(document, [...parts]));
}
