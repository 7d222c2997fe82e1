/** Names and versions of the file formats. A change to a format raises its version and ships a migration. */
export const BOARD_FORMAT = 'heatmargin-board';
export const BOARD_VERSION = 4;
export const PLAN_FORMAT = 'heatmargin-plan';
export const PLAN_VERSION = 6;
/** Extension of a ticket: a ZIP of board.json, plan.json and photos/. */
export const TICKET_EXTENSION = '.hmticket';
export const BOARD_EXTENSION = '.board.json';
