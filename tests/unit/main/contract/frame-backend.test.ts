import { expect, test } from 'vitest';
import { createFrameBackend } from '../../../../renderer/backend/frame-backend.ts';
import { decodeFrame, encodeFrame } from '../../../../shared-types/frame.ts';
import type { RequestMessage } from '../../../../shared-types/wire.ts';

/** A carrier whose other end is the test. */
function heldCarrier() {
  const sent: RequestMessage[] = [];
  let toWindow: (frame: Uint8Array) => void = () => undefined;
  let close: () => void = () => undefined;
  return {
    carrier: {
      send: (frame: Uint8Array<ArrayBuffer>) => void sent.push(decodeFrame(frame)!.value as RequestMessage),
      onFrame: (listener: (frame: Uint8Array) => void) => {
        toWindow = listener;
      },
      onClose: (listener: () => void) => {
        close = listener;
      },
    },
    sent,
    answer: (serial: number, value: unknown) =>
      toWindow(encodeFrame({ kind: 'answer', serial, result: { ok: true, value } })),
    event: (event: unknown) => toWindow(encodeFrame({ kind: 'event', event })),
    close: () => close(),
  };
}

test('answers find their requests by serial, in any order', async () => {
  const { carrier, sent, answer } = heldCarrier();
  const backend = createFrameBackend(carrier);
  const first = backend.request('ticket.close', { id: 'a' });
  const second = backend.request('ticket.close', { id: 'b' });
  answer(sent[1].serial, 'second');
  answer(sent[0].serial, 'first');
  expect(await Promise.all([first, second])).toEqual([
    { ok: true, value: 'first' },
    { ok: true, value: 'second' },
  ]);
});

test('a close answers what is open and what comes later with a problem, and says so once', async () => {
  const { carrier, sent, close } = heldCarrier();
  const backend = createFrameBackend(carrier);
  let closed = 0;
  backend.onClose(() => {
    closed += 1;
  });
  const open = backend.request('shelf.list', {});
  close();
  expect(await open).toMatchObject({ ok: false, problem: { code: 'refused' } });
  expect(await backend.request('shelf.list', {})).toMatchObject({ ok: false, problem: { code: 'refused' } });
  expect(sent).toHaveLength(1);
  expect(closed).toBe(1);
});

test('events reach every listener until it lets go', () => {
  const { carrier, event } = heldCarrier();
  const backend = createFrameBackend(carrier);
  const heard: unknown[] = [];
  const stop = backend.listen((one) => heard.push(one));
  event({ name: 'ticket.problem', id: 'a' });
  stop();
  event({ name: 'ticket.problem', id: 'b' });
  expect(heard).toEqual([{ name: 'ticket.problem', id: 'a' }]);
});
