import type { Bench } from './bench.ts';
import type { Handlers } from './dispatch.ts';
import { evaluationHandlers } from './evaluation-handlers.ts';
import { openingHandlers } from './opening-handlers.ts';
import { photoHandlers } from './photo-handlers.ts';
import type { Services } from './program.ts';
import { programHandlers } from './program-handlers.ts';
import { shelfHandlers } from './shelf-handlers.ts';
import { studyHandlers } from './study-handlers.ts';
import { ticketHandlers } from './ticket-handlers.ts';

/** All requests of the contract, from one file for each topic. */
export const createHandlers = (services: Services, bench: Bench): Handlers => ({
  ...shelfHandlers(services, bench),
  ...openingHandlers(services, bench),
  ...ticketHandlers(bench),
  ...photoHandlers(bench),
  ...evaluationHandlers(services, bench),
  ...studyHandlers(bench),
  ...programHandlers(services),
});
