import type { MessagePortMain } from 'electron';
import type { WindowCarrier } from '../../contract/serve-connection.ts';

/** Frames over one of Electron's ports; anything that is no buffer cuts it. Electron copies buffers between processes. */
export function portCarrier(port: MessagePortMain): WindowCarrier {
  const cut = () => port.close();
  return {
    send: (frame) => port.postMessage(frame.buffer),
    onFrame(listener) {
      port.on('message', ({ data }) => {
        if (data instanceof ArrayBuffer) listener(new Uint8Array(data));
        else if (data instanceof Uint8Array) listener(data);
        else cut();
      });
      port.start();
    },
    onClose: (listener) => void port.once('close', () => listener()),
    cut,
  };
}
