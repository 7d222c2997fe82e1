import { z } from 'zod';

/** What the technician decided for a part. Letters and shapes: rules/tag-glyphs.ts. */
export const TAG_KINDS = ['remove', 'relocate', 'shield', 'replace', 'reprogram', 'watchPoint'] as const;
export type TagKind = (typeof TAG_KINDS)[number];

const common = {
  id: z.string().min(1).max(64),
  order: z.int().positive().nullable().describe('Place in the order of work, from 1; null: not ordered.'),
  note: z.string().max(2000),
};
const onPart = { ...common, refdes: z.string().min(1).max(64) };

export const tagSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('remove'),
    ...onPart,
    goesBack: z.boolean(),
    traySlot: z.string().max(20).describe("Slot of the parts tray, such as 'A3'; empty: none yet."),
  }),
  z.strictObject({
    kind: z.literal('relocate'),
    ...onPart,
    toRefdes: z.string().max(64).describe('Empty position it moves to.'),
  }),
  z.strictObject({
    kind: z.literal('shield'),
    ...onPart,
    shield: z.string().max(64).describe('Id of a shield in the library.'),
    gapMm: z.number().min(0.1).max(20).optional().describe('Air gap in place of the library value, mm.'),
    layers: z.int().min(1).max(20).optional().describe('Layers in place of the library value.'),
    waterG: z.number().min(0.001).max(200).optional().describe('Water in the gel on this part, g; absent: 2 mm of it.'),
  }),
  z.strictObject({
    kind: z.literal('replace'),
    ...onPart,
    siteId: z.string().max(64),
    comesOff: z.string().max(500),
    goesOn: z.string().max(500),
  }),
  z.strictObject({ kind: z.literal('reprogram'), ...onPart, way: z.enum(['in-circuit', 'off-and-back']) }),
  z.strictObject({
    kind: z.literal('watchPoint'),
    ...common,
    name: z.string().max(20).describe("Thermocouple name, such as 'W1'."),
    side: z.enum(['top', 'bottom']),
    x: z.number(),
    y: z.number(),
    refdes: z.string().max(64).nullable(),
  }),
]);
export type Tag = z.infer<typeof tagSchema>;
export type TagOf<K extends TagKind> = Extract<Tag, { kind: K }>;
