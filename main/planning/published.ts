import type { Source } from '../../shared-types/library/library-types.ts';
import { assumption, computed, found, memory } from '../../shared-types/library/sources.ts';

/** A published figure that planning judges by, with its source. */
export type Published = { value: number; source: Source };
const figure = (value: number, source: Source): Published => ({ value, source });

const PRACTICE: Source = { text: 'Common practice, no source', how: 'memory', confidence: 'M' };
export const commonPractice = (text: string): Source => ({ ...PRACTICE, text: `${PRACTICE.text}: ${text}` });

/** J-STD-020 Table 5-2 (D.1, E): ramp-up from liquidus to peak at most 3 K/s. */
export const LARGEST_RAMP_K_PER_S = figure(3, found('J-STD-020 Table 5-2, ramp-up to peak at most 3 °C/s'));

/** J-STD-020 Table 5-2: 60-150 s above liquidus; a classification limit, not a board profile. */
export const LONGEST_ABOVE_LIQUIDUS_S = figure(150, found('J-STD-020 Table 5-2, above liquidus 60-150 s'));

/** Installation: seconds above liquidus of a lead-free array part. */
export const ABOVE_LIQUIDUS_S = {
  from: 45,
  to: 90,
  source: commonPractice('45-90 s above liquidus when an array part goes on'),
};

/** Removal: all joints molten about this long before the part is lifted. */
export const LIFTING_S = figure(10, commonPractice('all joints molten for about 10 s before lifting'));

/** Heating until the part lifts: how long after the last joint is molten, as a rule and at worst. */
export const LIFTS_AFTER_S = {
  ...{ usual: 20, worst: 90 },
  source: commonPractice('a part lifts some 20 s after its last joint is molten, at worst after 90 s'),
};

/** J-STD-020 Table 5-2: 25 C to peak in at most 8 min (lead-free) or 6 min (tin-lead). */
export const LONGEST_TO_PEAK_S = {
  leadFree: 480,
  tinLead: 360,
  source: found('J-STD-020 Table 5-2, 25 °C to peak in at most 8 min, tin-lead 6 min'),
};

/** Parts are qualified for three reflows. */
export const MOST_REFLOWS = figure(
  3,
  found(
    'Three reflows a part (J-STD-020 qualification; Microchip soldering profile, "a maximum of three reflow passes")',
  ),
);

/** Solder to part, K: ceramic chips up to 1206 and from 1210. */
export const CERAMIC_JUMP_K = {
  small: { warn: 150, limit: 190 },
  large: { warn: 130, limit: 130 },
  source: found(
    'Murata GRM caution 4-1: at most 190 K up to 1206, 130 K from 1210; warned at the 150/130 K of Panasonic ECJ',
  ),
};

/** Drop-off of underside parts: mass over the mating area of all pads. */
export const DROP_OFF_G_PER_IN2 = figure(
  30,
  found(
    'At most 30 g per square inch of pads (IPC TechNet, 1996 and 2002); not for ceramic, metal cans, MELF, crystals',
  ),
);

/** Neighbouring array parts cracked above these, C: centre and corner of the part. */
export const ARRAY_CRACK_C = {
  centre: 195,
  corner: 210,
  source: found(
    'Ismail et al., Jurnal Teknologi 84 (2022): at least 76 % of neighbouring BGAs cracked or separated above 195 °C (centre) and 210 °C (corner)',
  ),
};

/**
 * How far below solidus an underfilled neighbour must stay. The filler softens below the melting of the solder and
 * squeezes it out; no figure is published. 17 K is the distance of the 200 C neighbour figure to the solidus of SAC.
 */
export const UNDERFILL_BELOW_SOLIDUS_K = figure(
  17,
  found(
    'Wettermann, SMT007 Jan 2020: underfill softens below the melting of solder and squeezes it out; the distance of 17 °C is our assumption',
    'M',
  ),
);

/** Body temperature above which J-STD-033 asks whether the board must be baked before rework. */
export const BAKE_ABOVE_C = figure(200, memory('J-STD-033 clause 6, rework of boards: bodies above 200 °C'));

/**
 * Exchanges at one place after which a shop stops. IPC-7711/21 sets no limit; two replacements of an array and then scrap is
 * the practice of shops for the highest class.
 */
export const MOST_EXCHANGES = figure(
  2,
  found('Practice of shops: two replacements of an array, then scrap (SMTnet 6465); IPC-7711/21 sets no limit', 'M'),
);

/** Clearance that a nozzle and a mini-stencil need, mm, body to body. */
export const KEEP_OUT_MM = figure(
  3.125,
  found('IPC-7095 interim final draft 6.1.2: 3.125 mm body to body for nozzle and mini-stencil'),
);

/** Board temperature at the site at which gas is usually started, C. */
export const SITE_PREHEAT_C = figure(150, commonPractice('about 150 °C at the site before the gas'));

/** A shadow figure ('if shielded') agrees with a real shielded run within this, K (heat model page, section 5). */
export const SHADOW_TOLERANCE_K = figure(
  3,
  computed('The figure under a shield agrees with a shielded run within 3 °C'),
);

/**
 * Without a computed band, a figure this near to its limit may be beyond it: 90 % of the repeat of a hand-held run,
 * 1.645 x 8 K (heat model page, section 8).
 */
export const HAND_REPEAT_K = figure(13, assumption('A hand-held run repeats within 13 °C (90 %)'));

/** How near an electrolytic may stand to the rework area without a word, mm. */
export const ELECTROLYTIC_NEAR_MM = figure(10, commonPractice('electrolytics near hot air can vent or burst'));

/** Distance within which hot air reaches a microphone's port, mm. */
export const PORT_NEAR_MM = figure(
  30,
  found(
    'Knowles SPH1642HT5H-1 and InvenSense AN-1068: no air blown into the port; the distance of 30 mm is our assumption',
  ),
);

/** A ternary alloy of tin, bismuth and lead melts here, C. */
export const LEAD_IN_BISMUTH_C = figure(96, found('Lead in a tin-bismuth joint gives a ternary eutectic at 96 °C'));

/** Removal of underfilled parts: heat above this, C, and twist. */
export const UNDERFILLED_OFF_C = figure(
  240,
  found('Expert panel of 2017: above 240 °C to melt the solder and soften the underfill, then twist', 'M'),
);

/** Fillets of adhesive: residue comes off at about this, C. */
export const FILLET_C = figure(
  200,
  found('Adhesive maker: fillet residue comes off with hot air at about 200 °C, the part above 217 °C', 'M'),
);

/**
 * From this side length on a part counts as large: molten at one edge only, it tilts or tears. Smaller packages are
 * held by surface tension and their solid joints. Array parts count as large whatever their size.
 */
export const LARGE_PART_MM = figure(10, assumption('Large part: an array, or a side of 10 mm and more'));
