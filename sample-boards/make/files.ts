import { jsonSchemaOf } from '../../main/document/json-schemas.ts';
import { packTicket } from '../../main/document/ticket-archive.ts';
import type { Board } from '../../shared-types/board.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { ferryGateController } from './ferry-gate-controller/board.ts';
import { ferryGatePlan } from './ferry-gate-controller/plan.ts';
import { greenhouseGateway } from './greenhouse-gateway/board.ts';
import { greenhousePlan } from './greenhouse-gateway/plan.ts';
import { signalCard } from './signal-card/board.ts';
import { signalCardPlan } from './signal-card/plan.ts';
import { tideGaugeLogger } from './tide-gauge-logger/board.ts';
import { tideGaugePlan } from './tide-gauge-logger/plan.ts';
import { weighbridgeTerminal } from './weighbridge-terminal/board.ts';
import { weighbridgePlan } from './weighbridge-terminal/plan.ts';

/** `ticketOnly`: a board so large that only its packed ticket is kept. */
type Sample = { board: () => Board; plan: (board: Board) => Plan; ticketOnly?: boolean };
const SAMPLES: Sample[] = [
  { board: greenhouseGateway, plan: greenhousePlan },
  { board: tideGaugeLogger, plan: tideGaugePlan },
  { board: signalCard, plan: signalCardPlan, ticketOnly: true },
  { board: ferryGateController, plan: ferryGatePlan },
  { board: weighbridgeTerminal, plan: weighbridgePlan },
];

const json = (value: unknown): string => `${JSON.stringify(value, null, 1)}\n`;

/** Name and content of every file that the scripts write into sample-boards/: boards, plans, tickets packed of both, schemas. */
export function sampleFiles(): Record<string, string | Uint8Array> {
  const files: Record<string, string | Uint8Array> = {};
  for (const sample of SAMPLES) {
    const board = sample.board();
    const plan = sample.plan(board);
    if (!sample.ticketOnly) {
      files[`${board.name}.board.json`] = json(board);
      files[`${board.name}.plan.json`] = json(plan);
    }
    files[`${board.name}.hmticket`] = packTicket({ document: { board, plan }, photos: new Map() });
  }
  for (const format of ['board', 'plan', 'profile'] as const) files[`${format}.schema.json`] = jsonSchemaOf(format);
  return files;
}
