/** Where the socket of the local shell listens, and the names that the Electron shell's page and preload share. */
export const CONTRACT_SOCKET_PATH = '/contract';
export const CONTRACT_PORT_MESSAGE = 'heatmargin-contract-port';
export const CONTRACT_CONNECT_CHANNEL = 'contract.connect';
