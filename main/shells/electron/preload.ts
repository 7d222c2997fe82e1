import { contextBridge, ipcRenderer } from 'electron';
import { CONTRACT_CONNECT_CHANNEL, CONTRACT_PORT_MESSAGE } from '../../../shared-types/wire-names.ts';

// All that the page gets: a way to ask for its port. The port itself reaches the page as a message of its own window.
contextBridge.exposeInMainWorld('heatmargin', { connect: () => ipcRenderer.send(CONTRACT_CONNECT_CHANNEL) });
ipcRenderer.on(CONTRACT_PORT_MESSAGE, (event) => {
  window.postMessage(CONTRACT_PORT_MESSAGE, window.location.origin, event.ports);
});
