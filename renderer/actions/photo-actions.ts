import { Crosshair, ImagePlus } from 'lucide-react';
import { actionLabels as labels } from '../../shared-types/words/window/actions.ts';
import { choosePhotos } from '../photos/add-photos.ts';
import { chosenPhoto } from '../photos/chosen-photo.ts';
import type { App } from '../state/app.ts';
import { type Action, hasTicket } from './action.ts';

const hasPhotos: Action['enabled'] = (state) => (state.ticket?.document.board.photos.length ?? 0) > 0;

export const photoActions: readonly Action[] = [
  {
    ...{ id: 'photo-add', group: 'view', label: labels.photoAdd, keys: [], icon: ImagePlus, enabled: hasTicket },
    run: choosePhotos,
  },
  {
    ...{ id: 'photo-blink', group: 'view', label: labels.photoBlink, keys: ['U'], enabled: hasPhotos },
    on: (state) => state.view.blinked,
    run: blink,
  },
  {
    ...{ id: 'tool-match', group: 'tool', label: labels.toolMatch, keys: ['J'], icon: Crosshair, enabled: hasPhotos },
    on: (state) => state.view.tool === 'match',
    run: toggleMatching,
  },
];

/** Starts and ends matching of the chosen photo, or of the uppermost one of the shown side. */
export function toggleMatching(app: App): void {
  const { view, ticket } = app.store.get();
  if (view.tool === 'match') {
    app.setView({ tool: 'select' });
    return;
  }
  const photo = chosenPhoto(ticket?.document.board.photos ?? [], view.side, view.photoId);
  if (!photo) return;
  app.setView({ stage: 'photo', panelOpen: true, tool: 'match', photoId: photo.id });
}

const LEAST_MS = 350;
/** A held key repeats; when none has come for this long the key was let go unseen. */
const MOST_MS = 1500;
let ends = 0;

/** Hides the photos while the key is held, and for a moment at least. */
function blink(app: App): void {
  const began = app.store.get().view.blinked;
  window.clearTimeout(ends);
  ends = window.setTimeout(() => app.setView({ blinked: false }), MOST_MS);
  if (began) return;
  app.setView({ blinked: true });
  const since = performance.now();
  const lifted = () => {
    window.clearTimeout(ends);
    ends = window.setTimeout(
      () => app.setView({ blinked: false }),
      Math.max(0, LEAST_MS - (performance.now() - since)),
    );
  };
  window.addEventListener('keyup', lifted, { once: true });
}
