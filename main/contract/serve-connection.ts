import type { MainEvent } from '../../shared-types/contract.ts';
import { decodeFrame, encodeFrame } from '../../shared-types/frame.ts';
import { type MessageToWindow, requestMessageSchema } from '../../shared-types/wire.ts';
import type { Program } from './program.ts';

/** One way to carry frames to a window and back. */
export type WindowCarrier = {
  send(frame: Uint8Array<ArrayBuffer>): void;
  onFrame(listener: (frame: Uint8Array) => void): void;
  onClose(listener: () => void): void;
  /** Cuts the carrier: for a window that speaks no sense. */
  cut(): void;
};

/** Serves one window over a carrier until that closes. Resolves when its tickets are saved, or could not be. */
export function serveConnection(program: Program, carrier: WindowCarrier): Promise<void> {
  const send = (message: MessageToWindow) => carrier.send(encodeFrame(message));
  const connection = program.connect((event: MainEvent) => send({ kind: 'event', event }));
  carrier.onFrame((frame) => {
    const message = requestMessageSchema.safeParse(decodeFrame(frame)?.value);
    if (!message.success) {
      carrier.cut();
      return;
    }
    const { serial, name, input } = message.data;
    void connection.dispatch(name, input).then((result) => send({ kind: 'answer', serial, result }));
  });
  return new Promise((resolve) => {
    carrier.onClose(() => void connection.close().then(() => resolve()));
  });
}
