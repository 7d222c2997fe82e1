import { z } from 'zod';
import { boardSchema } from '../../shared-types/board.ts';
import { planSchema } from '../../shared-types/plan.ts';
import { profileSchema } from '../../shared-types/profile.ts';

const schemas = { board: boardSchema, plan: planSchema, profile: profileSchema };
export type PublishedFormat = keyof typeof schemas;

/** The published JSON Schema (2020-12) of a format, made from the schema that the program itself checks with. */
export function jsonSchemaOf(format: PublishedFormat): string {
  return `${JSON.stringify(z.toJSONSchema(schemas[format], { target: 'draft-2020-12', io: 'input' }), null, 2)}\n`;
}
