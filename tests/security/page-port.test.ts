import { expect, test } from 'vitest';
import { connectBackend } from '../../renderer/backend/connect.ts';
import { decodeFrame, encodeFrame } from '../../shared-types/frame.ts';
import type { RequestMessage } from '../../shared-types/wire.ts';

/** A page of Electron as the bridge sees it: a target for messages and the function that the preload put there. */
function electronPage() {
  const page = new EventTarget() as EventTarget & { heatmargin?: { connect(): void } };
  const hand = (source: unknown, data: unknown, port: MessagePort) =>
    page.dispatchEvent(Object.assign(new Event('message'), { source, data, ports: [port] }));
  return { page, hand };
}

test('the page takes its port from its own preload and from nobody else', async () => {
  const { page, hand } = electronPage();
  const own = new MessageChannel();
  const foreign = new MessageChannel();
  foreign.port2.onmessage = () => {
    throw new Error('a foreign port was used');
  };
  own.port2.onmessage = ({ data }: MessageEvent<ArrayBuffer>) => {
    const { serial } = decodeFrame(new Uint8Array(data))!.value as RequestMessage;
    const answer = { kind: 'answer', serial, result: { ok: true, value: 'from main' } };
    own.port2.postMessage(encodeFrame(answer).buffer);
  };
  page.heatmargin = {
    connect() {
      hand({}, 'heatmargin-contract-port', foreign.port1);
      hand(page, 'something else', foreign.port1);
      hand(page, 'heatmargin-contract-port', own.port1);
      hand(page, 'heatmargin-contract-port', foreign.port1);
    },
  };
  const backend = await connectBackend(page as unknown as Window);
  expect(await backend.request('about.read', {})).toEqual({ ok: true, value: 'from main' });
  for (const { port1, port2 } of [own, foreign]) for (const port of [port1, port2]) port.close();
});
