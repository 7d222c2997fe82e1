import type { Source } from './library-types.ts';

/** A figure read in the named document. */
export const found = (text: string, confidence: Source['confidence'] = 'H'): Source => ({
  text,
  how: 'found',
  confidence,
});
/** A figure from memory of the trade, not read anywhere for this program. */
export const memory = (text: string, confidence: Source['confidence'] = 'M'): Source => ({
  text: `${text}, from memory`,
  how: 'memory',
  confidence,
});
/** An assumption of ours, which a measurement or a data sheet should replace. */
export const assumption = (text: string): Source => ({ text, how: 'assumption', confidence: 'L' });
/** A figure that follows from others. */
export const computed = (text: string, confidence: Source['confidence'] = 'H'): Source => ({
  text,
  how: 'computed',
  confidence,
});

/** Where the thermal figures of the classes come from: typical material values, rounded. */
export const THERMAL_FIGURES = assumption('Thermal figures: typical material values, our assumption');

export const J_STD_075 = found('J-STD-075 base reflow condition, 260 °C for 40 s (as cited in trade press)', 'M');
export const J_STD_020_LEAD_FREE = found('J-STD-020 Table 4-2, Pb-free classification temperature');
export const J_STD_020_TIN_LEAD = found('J-STD-020 Table 4-1, SnPb classification temperature');
