/** What the doors say on the terminal, and the reasons that carriers and files put into problems. */
export const reasons = {
  connectionLost: 'the program behind this window no longer answers',
  unknownRequest: 'the program knows no such request',
  answerDoesNotFit: 'an answer did not fit the contract',
  requestFailed: 'a request broke off',
  pieceOutOfTurn: 'a piece of a picture came out of turn: add the picture again',
  workerFailed: (file: string) =>
    `the part of the program in ${file} stopped; it is started again with the next change`,
  workerMissing: (file: string) => `the part of the program in ${file} does not start`,
} as const;

export const requestSubject = 'The request';
export const answerSubject = (request: string): string => `The answer to ${request}`;

/** Shown to a browser that comes without this run's key. */
export const refusedPage = 'This page belongs to a running Heatmargin. Start it from the program window.\n';

export const doors = {
  usage:
    'Use: npm start -- [--no-window] [--stay] [--port N] [--shelf FOLDER] [--app-folder FOLDER] [TICKET.hmticket | BOARD.board.json]',
  address: (address: string) => `Heatmargin runs at ${address}`,
  noBrowser: (hasDisplay: boolean) =>
    hasDisplay
      ? 'No Chromium, Chrome or Edge was found: open the address in a browser on this machine.'
      : 'There is no display here: open the address in a browser on this machine.',
  browserFailed: (browser: string) => `${browser} did not open a window: open the address yourself.`,
  adopted: (name: string) => `${name}: work was recovered whose ticket file is gone; it lies on the shelf.`,
} as const;

/** Asked when the app is closed while a ticket cannot be saved. */
export const closing = {
  title: 'A ticket could not be saved',
  tryAgain: 'Try again',
  leave: 'Close; keep what the recovery journal holds',
} as const;
