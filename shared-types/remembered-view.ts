import { z } from 'zod';
import { pointSchema, sideSchema } from './geometry.ts';

const idSchema = z.string().max(200);

/** How a ticket was left on this bench: what is shown of it and chosen on it. It concerns the technician, not the ticket. */
export const rememberedViewSchema = z.strictObject({
  ticketId: idSchema,
  stage: z.string().max(20),
  side: sideSchema,
  parts: z.array(z.string().max(64)).max(200),
  siteId: idSchema.nullable(),
  watchId: idSchema.nullable(),
  coverId: idSchema.nullable(),
  /** Board point in the middle of the view (mm) and pixels for a mm; null: the whole board was in view. */
  eye: z.strictObject({ centre: pointSchema, zoom: z.number().positive() }).nullable(),
});
export type RememberedView = z.infer<typeof rememberedViewSchema>;
