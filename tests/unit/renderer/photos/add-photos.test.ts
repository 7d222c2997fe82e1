import { afterEach, expect, test, vi } from 'vitest';
import { addPhotos } from '../../../../renderer/photos/add-photos.ts';
import { createApp } from '../../../../renderer/state/app.ts';
import type { Backend, RequestName } from '../../../../shared-types/contract.ts';
import { fail, succeed } from '../../../../shared-types/problem.ts';
import { photoWords } from '../../../../shared-types/words/window/photo.ts';
import { smallDocument } from '../editing/sample-document.ts';

afterEach(() => vi.unstubAllGlobals());

/** A worker to which every file is a picture that serves as it came. */
class PreparingWorker {
  onmessage = (_event: { data: unknown }) => undefined;
  postMessage() {
    const size = { widthPx: 10, heightPx: 10 };
    const working = { bytes: null, mediaType: 'image/jpeg', ...size };
    const value = { mediaType: 'image/jpeg', orientation: 1, ...size, working };
    queueMicrotask(() => this.onmessage({ data: { kind: 'prepare', result: succeed(value) } }));
  }
  terminate() {}
}

/** A window on a ticket; `meanwhile` happens while a picture is on its way: before main takes it, or before its answer is there. */
async function windowWith(meanwhile: (app: ReturnType<typeof createApp>) => unknown, taken = false) {
  vi.stubGlobal('Worker', PreparingWorker);
  let open = '';
  const request = async (name: RequestName, input: { id?: string }) => {
    if (name === 'ticket.open') {
      open = input.id ?? '';
      return succeed({ id: open, fileName: 't', revision: 0, document: smallDocument(), recovered: false });
    }
    if (name === 'ticket.close') open = '';
    if (name !== 'photo.add') return succeed({ folder: '', cards: [], revision: 1 });
    if (!taken) await meanwhile(app);
    const answer = input.id === open ? succeed({ sha256: 'ab12' }) : fail('not-found');
    if (taken) await meanwhile(app);
    return answer;
  };
  const app = createApp({ request, listen: () => () => undefined } as unknown as Backend);
  await app.tickets.open('t');
  return app;
}

const files = ['one.jpg', 'two.jpg'].map((name) => new File(['picture'], name));

test('a photo lies on the side that was shown when it was given', async () => {
  const app = await windowWith((window) => window.setView({ side: 'bottom' }));
  await addPhotos(app, files);
  const { ticket, view } = app.store.get();
  expect(ticket?.document.board.photos.map(({ name, side }) => [name, side])).toEqual([
    ['one.jpg', 'top'],
    ['two.jpg', 'top'],
  ]);
  expect(view.side, 'it is shown').toBe('top');
});

test('photos of a ticket that is left meanwhile are told by name and put into no other', async () => {
  for (const [next, taken] of [
    [null, false],
    ['other', false],
    ['other', true],
  ] as const) {
    const app = await windowWith(async (window) => {
      await window.tickets.close();
      if (next) await window.tickets.open(next);
    }, taken);
    await addPhotos(app, files);
    const { ticket, notices, photosComing } = app.store.get();
    expect(ticket?.document.board.photos ?? []).toEqual([]);
    expect(notices.map(({ title, text }) => [title, text])).toEqual([
      [photoWords.ticketLeft, photoWords.ticketLeftText(['one.jpg', 'two.jpg'])],
    ]);
    expect(photosComing).toEqual([]);
  }
});
