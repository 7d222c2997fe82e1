import type { Step } from '../../shared-types/rules/steps/types.ts';
import type { App } from './app.ts';
import { showParts, showWatch } from './show-part.ts';

/** Shows what a step is about on the canvas: its thermocouple, its cover, or its parts. */
export function showStep(app: App, step: Step): void {
  const document = app.store.get().ticket?.document;
  if (!document || step.parts.length + Number(step.tagId !== null) === 0) return;
  if (step.kind === 'thermocouple' && step.tagId) {
    showWatch(app, step.tagId);
    return;
  }
  const cover = document.board.covers.find(({ id }) => id === step.parts[0]);
  if (cover) {
    app.setView({ side: cover.side });
    app.bench.select([{ kind: 'cover', id: cover.id }], 'replace');
    return;
  }
  const known = new Set(document.board.parts.map(({ refdes }) => refdes));
  showParts(
    app,
    step.parts.filter((refdes) => known.has(refdes)),
  );
}
