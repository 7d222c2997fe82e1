import type { WebSocket } from 'ws';
import type { WindowCarrier } from '../../contract/serve-connection.ts';

/** RFC 6455, section 7.4.1: 1003, data of a kind that the endpoint does not take. */
const UNSUPPORTED_DATA = 1003;

/** Frames over a socket of the server; anything but binary messages cuts it. */
export function socketCarrier(socket: WebSocket): WindowCarrier {
  const cut = () => socket.close(UNSUPPORTED_DATA);
  // A broken message is reported as an error and followed by the close.
  socket.on('error', () => undefined);
  return {
    send(frame) {
      if (socket.readyState === socket.OPEN) socket.send(frame);
    },
    onFrame(listener) {
      socket.on('message', (data, isBinary) => {
        if (isBinary && Buffer.isBuffer(data)) listener(data);
        else cut();
      });
    },
    onClose: (listener) => socket.once('close', () => listener()),
    cut,
  };
}
