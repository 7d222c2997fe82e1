import type { FrameCarrier } from './frame-backend.ts';

/** The parts of a MessagePort that the carrier needs. */
export type PortLike = {
  postMessage(message: unknown): void;
  addEventListener(type: 'message' | 'close', listener: (event: { data?: unknown }) => void): void;
  start(): void;
};

/** Frames over a message port: each message is the buffer of one frame. */
export function portCarrier(port: PortLike): FrameCarrier {
  return {
    send: (frame) => port.postMessage(frame.buffer),
    onFrame(listener) {
      port.addEventListener('message', ({ data }) => {
        if (data instanceof ArrayBuffer) listener(new Uint8Array(data));
      });
      port.start();
    },
    onClose: (listener) => port.addEventListener('close', () => listener()),
  };
}
