import { jsonSchemaOf } from '../../main/document/json-schemas.ts';
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

/** Name and text of every file that the scripts write into sample-boards/. */
export function sampleFiles(): Record<string, string> {
  const files: Record<string, string> = {};
  for (const [makeBoard, makePlan] of SAMPLES) {
    const board = makeBoard();
    files[`${board.name}.board.json`] = json(board);
    files[`${board.name}.plan.json`] = json(makePlan(board));
  }
  for (const format of ['board', 'plan', 'profile'] as const) files[`${format}.schema.json`] = jsonSchemaOf(format);
  return files;
}
