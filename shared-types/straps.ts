import { z } from 'zod';

const id = z.string().min(1).max(64);
const refdes = z.string().min(1).max(64);
const value = z.string().max(50);
const tolerancePercent = z.number().min(0).max(100).nullable().describe('Per cent either way; null: not known.');

/** A place whose fitted or empty state the board reads at reset. */
export const strapPositionSchema = z.strictObject({
  refdes,
  value: value.describe("What belongs there, such as '10k' or '0R'; empty: the setting says it (divider)."),
  tolerancePercent,
  meaning: z.string().max(200).describe('What it says when fitted, in words.'),
});
export type StrapPosition = z.infer<typeof strapPositionSchema>;

/** Amounts as memory makers count: a Gbit is 2^30 bit and a GB 2^30 byte (JEDEC JESD100B, from memory). */
export const capacitySchema = z.strictObject({
  amount: z.number().positive().max(1e6),
  unit: z.enum(['Mbit', 'Gbit', 'MB', 'GB']),
});
export type Capacity = z.infer<typeof capacitySchema>;

const settingFields = {
  id,
  label: z.string().min(1).max(200),
  maker: z.string().max(200),
  capacity: capacitySchema.nullable().describe('What the setting tells the board that it has, in all.'),
};
const level = z.union([z.literal(0), z.literal(1)]);

/** One bit that the board reads: a pull-up and a pull-down position, of which one is fitted. */
export const strapBitSchema = z.strictObject({
  name: z.string().min(1).max(64),
  pullUp: refdes.nullable().describe('Position that makes it 1; null: none on the board.'),
  pullDown: refdes.nullable().describe('Position that makes it 0; null: none on the board.'),
  whenOpen: level.nullable().describe('What it reads with both empty (internal pull); null: nothing defined.'),
});
export type StrapBit = z.infer<typeof strapBitSchema>;

export const codedSettingSchema = z.strictObject({
  ...settingFields,
  code: z
    .string()
    .regex(/^[01x]{1,64}$/)
    .describe('One character for each bit or jumper in their order: 1, 0, or x where it does not matter.'),
});

/** A stretch of converter voltages that gives one code. With a ratiometric converter the volts are at `supplyV`. */
export const strapWindowSchema = z.strictObject({
  code: z.string().min(1).max(20),
  fromV: z.number().min(0).max(1000),
  toV: z.number().min(0).max(1000),
});
export type StrapWindow = z.infer<typeof strapWindowSchema>;

export const dividerSettingSchema = z.strictObject({
  ...settingFields,
  code: z.string().min(1).max(20).describe('Code of a window.'),
  top: value.min(1).nullable().describe('Value from supply to converter; null: left empty.'),
  bottom: value.min(1).nullable().describe('Value from converter to ground; null: left empty.'),
});

const groupFields = {
  id,
  name: z.string().min(1).max(100),
  describes: z.array(refdes).max(50).describe('Parts whose capacity the setting states in sum.'),
  positions: z.array(strapPositionSchema).min(1).max(64),
};

export const strapGroupSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('bits'),
    ...groupFields,
    bits: z.array(strapBitSchema).min(1).max(64),
    settings: z.array(codedSettingSchema).max(500),
  }),
  z.strictObject({
    kind: z.literal('jumpers'),
    ...groupFields,
    settings: z.array(codedSettingSchema).max(500).describe('Code: 1 fitted, 0 empty, in the order of the positions.'),
  }),
  z.strictObject({
    kind: z.literal('divider'),
    ...groupFields,
    top: refdes,
    bottom: refdes,
    supplyV: z.number().positive().max(1000),
    supplyTolerancePercent: z.number().min(0).max(50),
    ratiometric: z.boolean().describe('True when the converter measures against the same supply: it then cancels.'),
    converterErrorMv: z.number().min(0).max(10000).describe('Largest error of converter and input, mV either way.'),
    windows: z.array(strapWindowSchema).min(1).max(256),
    settings: z.array(dividerSettingSchema).max(500),
  }),
]);
export type StrapGroup = z.infer<typeof strapGroupSchema>;
export type StrapKind = StrapGroup['kind'];
export type StrapGroupOf<K extends StrapKind> = Extract<StrapGroup, { kind: K }>;
export type StrapSetting = StrapGroup['settings'][number];

/** Parts at hand, by value and chip size. */
export const strapStockSchema = z.strictObject({
  value: value.min(1),
  size: z.string().max(30).describe("Chip size in inch code, such as '0402'; else 'length x width mm'."),
  tolerancePercent,
  count: z.int().min(0).max(1e6).nullable().describe('null: enough.'),
});
export type StrapStock = z.infer<typeof strapStockSchema>;

/** How a technician knows what stands in a position. Chips of 0402 and smaller mostly carry no marking. */
export const STRAP_EVIDENCE = ['marking', 'measured-out-of-circuit', 'from-reel', 'not-checked'] as const;
export type StrapEvidence = (typeof STRAP_EVIDENCE)[number];

/** A position as the technician found or left it; it wins over the board drawing. */
export const strapTickSchema = z.strictObject({
  refdes,
  fitted: z.boolean(),
  value: value.describe('What is fitted; empty: what belongs there.'),
  evidence: z.enum(STRAP_EVIDENCE),
  marking: z.string().max(20).describe('Marking as read; empty: none.'),
});
export type StrapTick = z.infer<typeof strapTickSchema>;

/** The plan's decisions about straps. */
export const strapWorkSchema = z.strictObject({
  wanted: z.array(z.strictObject({ groupId: id, settingId: id })).max(100),
  stock: z.array(strapStockSchema).max(500),
  stockFirst: z.boolean().describe('True: take new parts where there are any, move old ones only where not.'),
  ticked: z.array(strapTickSchema).max(1000),
});
export type StrapWork = z.infer<typeof strapWorkSchema>;

export const emptyStrapWork = (): StrapWork => ({ wanted: [], stock: [], stockFirst: false, ticked: [] });

/** One side of an exchange: what comes off a site, or what goes on. */
export const exchangedPartSchema = z.strictObject({
  name: z.string().max(200).describe('Maker and part number.'),
  marking: z.string().max(100).describe('As read on the part; empty: not read.'),
  count: z.int().min(1).max(64).describe('Equal dies or parts at this site.'),
  capacity: capacitySchema.nullable().describe('Of each.'),
  ballAlloy: z.string().max(64).describe("Alloy of the balls, an id of the library, or 'unknown'."),
  heightMm: z.number().positive().max(200).nullable().describe('Seated height, mm.'),
  powerW: z.number().min(0).max(10000).nullable(),
});
export type ExchangedPart = z.infer<typeof exchangedPartSchema>;

/** What comes off and what goes on at a site, and whether the two agree (ball-out, organisation, speed). */
export const siteExchangeSchema = z.strictObject({
  siteId: id,
  off: exchangedPartSchema,
  on: exchangedPartSchema,
  agrees: z.enum(['agrees', 'differs', 'not-checked']),
  agreesNote: z.string().max(500),
});
export type SiteExchange = z.infer<typeof siteExchangeSchema>;

export const unknownPart = (): ExchangedPart => ({
  name: '',
  marking: '',
  count: 1,
  capacity: null,
  ballAlloy: 'unknown',
  heightMm: null,
  powerW: null,
});
