import type { Backend, MainEvent } from '../../shared-types/contract.ts';
import { decodeFrame, encodeFrame } from '../../shared-types/frame.ts';
import { fail, type Result } from '../../shared-types/problem.ts';
import type { MessageToWindow, RequestMessage } from '../../shared-types/wire.ts';
import { reasons, requestSubject } from '../../shared-types/words/shell.ts';

/** One way to carry frames to main and back. `onClose` is called once, when nothing more can come. */
export type FrameCarrier = {
  send(frame: Uint8Array<ArrayBuffer>): void;
  onFrame(listener: (frame: Uint8Array) => void): void;
  onClose(listener: () => void): void;
};

type Waiting = (result: Result<unknown>) => void;

/** A backend over any carrier. When the carrier closes, every request still open is answered with a problem. */
export function createFrameBackend(carrier: FrameCarrier): Backend & { onClose(listener: () => void): void } {
  const waiting = new Map<number, Waiting>();
  const listeners = new Set<(event: MainEvent) => void>();
  const closeListeners = new Set<() => void>();
  let nextSerial = 1;
  let closed = false;

  carrier.onFrame((frame) => {
    const message = decodeFrame(frame)?.value as MessageToWindow | undefined;
    if (message?.kind === 'event') for (const listener of listeners) listener(message.event);
    if (message?.kind !== 'answer') return;
    waiting.get(message.serial)?.(message.result);
    waiting.delete(message.serial);
  });
  carrier.onClose(() => {
    closed = true;
    for (const answer of waiting.values()) answer(connectionLost());
    waiting.clear();
    for (const listener of closeListeners) listener();
  });

  const request = (name: string, input: unknown): Promise<Result<unknown>> => {
    if (closed) return Promise.resolve(connectionLost());
    const message: RequestMessage = { kind: 'request', serial: nextSerial++, name, input };
    return new Promise((resolve) => {
      waiting.set(message.serial, resolve);
      carrier.send(encodeFrame(message));
    });
  };

  return {
    request: request as Backend['request'],
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    onClose: (listener) => closeListeners.add(listener),
  };
}

const connectionLost = () => fail('refused', { where: requestSubject, detail: { reason: reasons.connectionLost } });
