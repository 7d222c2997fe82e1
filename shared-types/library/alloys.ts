import type { Alloy, Source } from './library-types.ts';
import { found } from './sources.ts';

const TABLES = 'Published alloy tables (alasir.com, indium.com)';
const REMOVAL = 'Public encyclopedia table of solder alloys';

type Row = [
  id: string,
  name: string,
  solidusC: number,
  liquidusC: number,
  leadFree: boolean,
  confidence?: Source['confidence'],
  text?: string,
];

const ROWS: Row[] = [
  ['sn63pb37', 'Sn63Pb37', 183, 183, false],
  ['sn62pb36ag2', 'Sn62Pb36Ag2', 179, 179, false],
  ['sac305', 'SAC305', 217, 220, true],
  ['sac387', 'SAC387', 217, 220, true, 'H', `${TABLES}; others print 217/217-219`],
  ['sac405', 'SAC405', 217, 220, true],
  ['sac105', 'SAC105', 215, 227, true, 'M'],
  ['sn993cu07', 'Sn99.3Cu0.7', 227, 227, true],
  ['sn965ag35', 'Sn96.5Ag3.5', 221, 221, true],
  ['sn42bi58', 'Sn42Bi58', 138, 138, true],
  ['sn42bi57ag1', 'Sn42Bi57Ag1', 139, 140, true, 'H', `${TABLES}; others print 137/139 and 138/140`],
  ['in52sn48', 'In52Sn48', 118, 118, true],
  ['bi46sn34pb20', 'Bi46Sn34Pb20', 96, 96, false],
  ['bi56sn30in14', 'Removal alloy Bi56Sn30In14', 79, 91, true, 'M', REMOVAL],
  ['bi49pb18sn12in21', 'Removal alloy Bi49Pb18Sn12In21', 58, 58, false, 'M', REMOVAL],
];

/** Solder alloys with solidus and liquidus, C. */
export const ALLOYS: readonly Alloy[] = ROWS.map(([id, name, solidusC, liquidusC, leadFree, confidence, text]) => ({
  id,
  name,
  solidusC,
  liquidusC,
  leadFree,
  source: found(text ?? TABLES, confidence ?? 'H'),
}));

const byId = new Map(ALLOYS.map((alloy) => [alloy.id, alloy]));

/** The alloy with this id; undefined for 'unknown' and for ids the library does not hold. */
export const alloyById = (id: string): Alloy | undefined => byId.get(id);

/** What a board of unknown alloy may be soldered with: tin-lead or SAC. */
export const USUAL_CANDIDATES: readonly Alloy[] = ['sn63pb37', 'sac305'].map((id) => byId.get(id) as Alloy);

export type JudgedAs = 'target' | 'neighbour';

/**
 * Solidus and liquidus a joint is judged with, C. An unknown alloy takes the cautious end of the usual candidates:
 * a target the highest (it must melt whatever it is), a neighbour the lowest (it must stay solid whatever it is).
 */
export function meltingRange(
  alloyId: string,
  judgedAs: JudgedAs,
): { solidusC: number; liquidusC: number; alloy: Alloy; known: boolean } {
  const alloy = byId.get(alloyId);
  if (alloy) return { solidusC: alloy.solidusC, liquidusC: alloy.liquidusC, alloy, known: true };
  const sorted = [...USUAL_CANDIDATES].sort((a, b) => a.liquidusC - b.liquidusC);
  const taken = judgedAs === 'target' ? sorted[sorted.length - 1] : sorted[0];
  return { solidusC: taken.solidusC, liquidusC: taken.liquidusC, alloy: taken, known: false };
}

/**
 * The one temperature a joint is judged with, C: a neighbour's solidus, a target's liquidus of the highest candidate
 * when its alloy is unknown, else its solidus.
 */
export function solidusFor(alloyId: string, judgedAs: JudgedAs): number {
  const range = meltingRange(alloyId, judgedAs);
  return judgedAs === 'target' && !range.known ? range.liquidusC : range.solidusC;
}
