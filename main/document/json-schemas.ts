import { z } from 'zod';
import { boardSchema } from '../../shared-types/board.ts';
import { planSchema } from '../../shared-types/plan.ts';

/** The published JSON Schema (2020-12) of a format, made from the schema that the program itself checks with. */
export function jsonSchemaOf(format: 'board' | 'plan'): string {
  const schema = format === 'board' ? boardSchema : planSchema;
  return `${JSON.stringify(z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input' }), null, 2)}\n`;
}
