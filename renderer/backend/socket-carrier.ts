import type { FrameCarrier } from './frame-backend.ts';

/** The parts of a WebSocket that the carrier needs. */
export type SocketLike = {
  binaryType: string;
  readyState: number;
  send(data: Uint8Array<ArrayBuffer>): void;
  addEventListener(type: 'message', listener: (event: { data: unknown }) => void): void;
  addEventListener(type: 'open' | 'close' | 'error', listener: () => void): void;
};

const OPEN = 1;

/** Frames over a WebSocket; what is sent before it opens waits. */
export function socketCarrier(socket: SocketLike): FrameCarrier {
  socket.binaryType = 'arraybuffer';
  const queue: Uint8Array<ArrayBuffer>[] = [];
  let closed = false;
  socket.addEventListener('open', () => {
    for (const frame of queue.splice(0)) socket.send(frame);
  });
  return {
    send(frame) {
      if (socket.readyState === OPEN) socket.send(frame);
      else queue.push(frame);
    },
    onFrame(listener) {
      socket.addEventListener('message', ({ data }) => {
        if (data instanceof ArrayBuffer) listener(new Uint8Array(data));
      });
    },
    onClose(listener) {
      const once = () => {
        if (!closed) listener();
        closed = true;
      };
      socket.addEventListener('close', once);
      socket.addEventListener('error', once);
    },
  };
}
