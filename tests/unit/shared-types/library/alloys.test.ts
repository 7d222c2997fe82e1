import { describe, expect, it } from 'vitest';
import { ALLOYS, alloyById, meltingRange, solidusFor } from '../../../../shared-types/library/alloys.ts';

/** Solidus and liquidus, C, of published alloy tables (alasir.com solder alloys, indium.com solder paste alloys). */
const PUBLISHED: Record<string, [number, number]> = {
  Sn63Pb37: [183, 183],
  Sn62Pb36Ag2: [179, 179],
  SAC305: [217, 220],
  SAC387: [217, 220],
  SAC405: [217, 220],
  SAC105: [215, 227],
  'Sn99.3Cu0.7': [227, 227],
  'Sn96.5Ag3.5': [221, 221],
  Sn42Bi58: [138, 138],
  Sn42Bi57Ag1: [139, 140],
  In52Sn48: [118, 118],
  Bi46Sn34Pb20: [96, 96],
};

describe('alloys', () => {
  it('carries the published melting ranges', () => {
    for (const [name, [solidus, liquidus]] of Object.entries(PUBLISHED)) {
      const alloy = ALLOYS.find((one) => one.name === name);
      expect([alloy?.solidusC, alloy?.liquidusC], name).toEqual([solidus, liquidus]);
    }
  });

  it('marks exactly the alloys with lead in their name as leaded', () => {
    for (const alloy of ALLOYS) expect(alloy.leadFree, alloy.name).toBe(!/Pb/.test(alloy.name));
  });

  it('has unique ids and a solidus at or below the liquidus', () => {
    expect(new Set(ALLOYS.map((alloy) => alloy.id)).size).toBe(ALLOYS.length);
    for (const alloy of ALLOYS) expect(alloy.solidusC).toBeLessThanOrEqual(alloy.liquidusC);
  });

  it('judges an unknown alloy at the cautious end: targets for SAC, neighbours for tin-lead', () => {
    expect(meltingRange('unknown', 'target')).toMatchObject({ liquidusC: 220, known: false });
    expect(meltingRange('unknown', 'neighbour')).toMatchObject({ solidusC: 183, known: false });
    expect(solidusFor('unknown', 'target')).toBe(220);
    expect(solidusFor('unknown', 'neighbour')).toBe(183);
  });

  it('judges a known alloy at its own range, whoever asks', () => {
    for (const judgedAs of ['target', 'neighbour'] as const) {
      expect(solidusFor('sac305', judgedAs)).toBe(217);
      expect(meltingRange('sac305', judgedAs)).toMatchObject({ liquidusC: 220, known: true });
    }
    expect(alloyById('unknown')).toBeUndefined();
  });
});
