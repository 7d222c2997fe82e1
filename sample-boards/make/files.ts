import { jsonSchemaOf } from '../../main/document/json-schemas.ts';
import { packTicket } from '../../main/document/ticket-archive.ts';
import type { Board } from '../../shared-types/board.ts';
import type { Plan } from '../../shared-types/plan.ts';
import { greenhouseGateway } from './greenhouse-gateway/board.ts';
import { greenhousePlan } from './greenhouse-gateway/plan.ts';
import { tideGaugeLogger } from './tide-gauge-logger/board.ts';
import { tideGaugePlan } from './tide-gauge-logger/plan.ts';

const SAMPLES: [() => Board, (board: Board) => Plan][] = [
  [greenhouseGateway, greenhousePlan],
  [tideGaugeLogger, tideGaugePlan],
];

const json = (value: unknown): string => `${JSON.stringify(value, null, 1)}\n`;

/** Name and content of every file that the scripts write into sample-boards/: boards, plans, tickets packed of both, schemas. */
export function sampleFiles(): Record<string, string | Uint8Array> {
  const files: Record<string, string | Uint8Array> = {};
  for (const [makeBoard, makePlan] of SAMPLES) {
    const board = makeBoard();
    files[`${board.name}.board.json`] = json(board);
    const plan = makePlan(board);
    files[`${board.name}.plan.json`] = json(plan);
    files[`${board.name}.hmticket`] = packTicket({ document: { board, plan }, photos: new Map() });
  }
  for (const format of ['board', 'plan', 'profile'] as const) files[`${format}.schema.json`] = jsonSchemaOf(format);
  return files;
}
