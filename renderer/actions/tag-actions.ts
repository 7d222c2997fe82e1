import { TAG_GLYPHS } from '../../shared-types/rules/tag-glyphs.ts';
import { actionLabels as labels } from '../../shared-types/words/window/actions.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { hasTag, type PartTagKind, toggleTag } from '../editing/tags.ts';
import { watchParts } from '../editing/watch-points.ts';
import type { App } from '../state/app.ts';
import { type Action, hasParts, hasTicket } from './action.ts';

/** Tags by their letters. Replace and watch have a tool for the bare board, used when no part is selected. */
export const tagActions: readonly Action[] = [
  tagAction('remove', labels.tagRemove),
  tagAction('relocate', labels.tagRelocate),
  tagAction('shield', labels.tagShield),
  { ...tagAction('replace', labels.tagReplace), enabled: hasTicket, run: replaceOrTool },
  tagAction('reprogram', labels.tagReprogram),
  {
    id: 'tag-watchPoint',
    group: 'tag',
    label: labels.tagWatch,
    keys: [TAG_GLYPHS.watchPoint.letter],
    enabled: hasTicket,
    run: watchOrTool,
  },
];

function tagAction(kind: PartTagKind, label: string): Action {
  return {
    id: `tag-${kind}`,
    group: 'tag',
    label,
    keys: [TAG_GLYPHS[kind].letter],
    on: ({ ticket, selection }) =>
      ticket !== null &&
      selection.parts.size > 0 &&
      [...selection.parts].every((refdes) => hasTag(ticket.document, refdes, kind)),
    enabled: hasParts,
    run: (app) => toggleOnSelection(app, kind),
  };
}

function toggleOnSelection(app: App, kind: PartTagKind): void {
  const refdes = [...app.store.get().selection.parts];
  app.bench.apply(editLabels.tag(TAG_GLYPHS[kind].name, refdes), (document) => toggleTag(document, refdes, kind));
}

function replaceOrTool(app: App): void {
  if (app.store.get().selection.parts.size > 0) toggleOnSelection(app, 'replace');
  else app.setView({ tool: 'site' });
}

function watchOrTool(app: App): void {
  const refdes = [...app.store.get().selection.parts];
  if (refdes.length === 0) app.setView({ tool: 'watch' });
  else app.bench.apply(editLabels.tag(TAG_GLYPHS.watchPoint.name, refdes), (document) => watchParts(document, refdes));
}
