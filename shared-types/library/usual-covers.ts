import type { Cover } from '../board.ts';

/** What is usual for a kind of cover; common practice, no source. The technician corrects it. */
export const USUAL_COVERS: Record<Cover['kind'], Pick<Cover, 'heightMm' | 'sheetMm' | 'material' | 'fixing'>> = {
  can: { heightMm: 3, sheetMm: 0.2, material: 'nickel-silver', fixing: 'soldered' },
  frame: { heightMm: 2.5, sheetMm: 0.2, material: 'nickel-silver', fixing: 'soldered' },
  stiffener: { heightMm: 1.5, sheetMm: 1.5, material: 'aluminium', fixing: 'screwed' },
};
