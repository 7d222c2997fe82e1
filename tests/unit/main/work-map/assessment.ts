import type { Assessment, PartExposure } from '../../../../shared-types/evaluation.ts';

/** An assessment that found nothing. */
export const emptyAssessment = (): Assessment => ({
  evaluation: {
    revision: 0,
    phase: 'coarse',
    grid: { columns: 0, rows: 0, cellMm: 1, originX: 0, originY: 0, grownFromMm: null },
    fields: { top: new Float32Array(), bottom: new Float32Array() },
    runs: [],
    parts: [],
    notEvaluated: [],
    notices: [],
    bands: 'not-computed',
  },
  actions: [],
  findings: [],
  runNumbers: [],
  cautions: [],
});

/** What a part goes through, with fields to change. */
export function exposure(refdes: string, fields: Partial<PartExposure> = {}): PartExposure {
  const peak = { maxC: 150, minC: 140, meanC: 145 };
  return {
    refdes,
    side: 'top',
    worstRunId: 'run-1',
    body: peak,
    skin: peak,
    joint: peak,
    clearanceMm: 12,
    peakAtS: 300,
    secondsOver: 0,
    riseKPerS: 1,
    acrossK: 5,
    shares: { gas: 0.4, preheater: 0.4, joints: 0.2, losses: 0.1 },
    ifShielded: { bodyMaxC: 140, skinMaxC: 140, jointMaxC: 140 },
    limits: { body: null, skin: null, joint: null },
    margins: { body: null, skin: null, joint: null },
    marginK: 40,
    governedBy: 'body',
    bandK: null,
    state: 'clear',
    reflow: 'none',
    reflows: 0,
    warmCycles: 1,
    solidusC: 217,
    ...fields,
  };
}
