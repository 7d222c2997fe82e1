/** Which of the two classification tables applies. */
export type Process = 'lead-free' | 'tin-lead';

/**
 * Classification temperature Tc of a moulded or array package, C.
 * J-STD-020 (D.1, E, F identical) Table 4-2 for lead-free, Table 4-1 for tin-lead; volume without balls and leads.
 * The borders 1.6 and 2.5 mm, 350 and 2000 mm3 of Table 4-2 belong to the middle field; in Table 4-1, 2.5 mm and
 * 350 mm3 belong to the upper one.
 */
export function classificationC(thicknessMm: number, volumeMm3: number, process: Process): number {
  if (process === 'tin-lead') return thicknessMm < 2.5 && volumeMm3 < 350 ? 235 : 220;
  if (thicknessMm < 1.6) return 260;
  const column = volumeMm3 < 350 ? 0 : volumeMm3 <= 2000 ? 1 : 2;
  return (thicknessMm <= 2.5 ? [260, 250, 245] : [250, 245, 245])[column];
}
