import { describe, expect, it } from 'vitest';
import {
  limitsOf,
  SHOP_NEIGHBOUR_JOINT,
  shopJointLimit,
  solidusLimit,
  targetSkinLimit,
} from '../../../../shared-types/library/limits.ts';
import { partOf } from './support.ts';

describe('limits of a part', () => {
  it('judges array and moulded packages on their skin at Tc (J-STD-020 Table 4-2)', () => {
    // 17 x 17 x 1.4 mm: 405 mm3, below 1.6 mm.
    expect(limitsOf(partOf('bga', [17, 17, 1.4])).skin).toMatchObject({ celsius: 260, origin: 'class' });
    // 17 x 17 x 1.7: 491 mm3, 1.6 to 2.5 mm.
    expect(limitsOf(partOf('bga', [17, 17, 1.7])).skin?.celsius).toBe(250);
    // 35 x 35 x 3.3: 4042 mm3, above 2.5 mm.
    expect(limitsOf(partOf('bga-lidded', [35, 35, 3.3])).skin?.celsius).toBe(245);
    expect(limitsOf(partOf('bga', [17, 17, 1.4])).body).toBeNull();
    expect(limitsOf(partOf('bga', [17, 17, 1.4])).skin?.source.text).toContain('4-2');
  });

  it('takes Table 4-1 for a package soldered with tin-lead, and Table 4-2 where the alloy is not known', () => {
    const body: [number, number, number] = [17, 17, 1.7];
    expect(limitsOf(partOf('bga', body, { alloy: 'sn63pb37' })).skin?.celsius).toBe(220);
    expect(limitsOf(partOf('so', [4.9, 3.9, 1.75], { alloy: 'sn63pb37' })).skin?.celsius).toBe(235);
    expect(limitsOf(partOf('bga', body, { alloy: 'unknown' })).skin?.celsius).toBe(250);
    // A bismuth joint says nothing about how the package was classified.
    expect(limitsOf(partOf('bga', body, { alloy: 'sn42bi58' })).skin?.celsius).toBe(250);
  });

  it('takes the class height where the board does not say one, and pi/4 for a round body', () => {
    const known = limitsOf(partOf('bga-lidded', [20, 20, 3])).skin?.celsius;
    expect(limitsOf(partOf('bga-lidded', [20, 20, null])).skin?.celsius).toBe(known);
    // 30 x 30 x 2.4: 2160 mm3 as a square (245), 1696 mm3 as a disc (250).
    const square = partOf('bga', [30, 30, 2.4]);
    expect(limitsOf(square).skin?.celsius).toBe(245);
    expect(limitsOf({ ...square, package: { ...square.package, shape: 'round' } }).skin?.celsius).toBe(250);
  });

  it('lets the data sheet win over the class, each limit for itself', () => {
    const own = partOf('electrolytic-medium', [8, 8, 10.2], { limits: { bodyC: 260, source: 'its data sheet' } });
    expect(limitsOf(own).body).toEqual({
      celsius: 260,
      origin: 'own',
      source: { text: 'its data sheet', how: 'found', confidence: 'H' },
    });
    const joint = partOf('bga', [17, 17, 1.4], { limits: { jointC: 150, source: 'low-temperature paste' } });
    expect(limitsOf(joint).joint?.celsius).toBe(150);
    expect(limitsOf(joint).skin).toMatchObject({ celsius: 260, origin: 'class' });
  });

  it('judges electrolytics on the body by diameter (Panasonic recommended soldering, standard types)', () => {
    const limit = (id: string) => limitsOf(partOf(id, [8, 8, 10])).body?.celsius;
    expect(limit('electrolytic-small')).toBe(250);
    expect(limit('electrolytic-medium')).toBe(235);
    expect(limit('electrolytic-large')).toBe(230);
  });

  it('keeps lithium cells at 85 C (Panasonic, Renata) and rechargeable ones at 60 C (from memory)', () => {
    expect(limitsOf(partOf('coin-cell', [20, 20, 5])).body?.celsius).toBe(85);
    expect(limitsOf(partOf('lithium-cell', [26, 15, 15])).body?.celsius).toBe(85);
    expect(limitsOf(partOf('battery', [30, 20, 5])).body?.celsius).toBe(60);
  });

  it('judges connectors on the skin, an unknown plastic at the lower end of PBT (deflects at 200-220 C)', () => {
    expect(limitsOf(partOf('connector-pbt', [10, 5, 5]))).toMatchObject({ body: null, skin: { celsius: 200 } });
    expect(limitsOf(partOf('connector-unknown', [10, 5, 5])).skin?.celsius).toBe(200);
    expect(limitsOf(partOf('connector-lcp', [10, 5, 5])).skin?.celsius).toBe(260);
  });

  it('gives a class that the library does not hold the cautious limits of an unknown part', () => {
    expect(limitsOf(partOf('no-such-class', [10, 5, 5])).skin?.celsius).toBe(200);
  });
});

describe('limits of joints', () => {
  it('judges a neighbour at its solidus, an unknown alloy at that of tin-lead', () => {
    expect(solidusLimit(partOf('bga', [9, 9, 1])).celsius).toBe(217);
    expect(solidusLimit(partOf('bga', [9, 9, 1], { alloy: 'sn42bi58' })).celsius).toBe(138);
    const unknown = solidusLimit(partOf('bga', [9, 9, 1], { alloy: 'unknown' }));
    expect(unknown.celsius).toBe(183);
    expect(unknown.source.text).toContain('not known');
  });

  it('knows the shop presets 200 C lead-free and 180 C tin-lead (published course page "Part Removal")', () => {
    expect(SHOP_NEIGHBOUR_JOINT['lead-free'].celsius).toBe(200);
    expect(SHOP_NEIGHBOUR_JOINT['tin-lead'].celsius).toBe(180);
    expect(shopJointLimit(partOf('bga', [9, 9, 1])).celsius).toBe(200);
    expect(shopJointLimit(partOf('bga', [9, 9, 1], { alloy: 'unknown' })).celsius).toBe(180);
  });

  it('keeps a target 5 K below its package limit', () => {
    expect(targetSkinLimit(partOf('bga', [17, 17, 1.4]))).toBe(255);
    expect(targetSkinLimit(partOf('bga', [17, 17, 1.4], { limits: { skinC: 240, source: 'sheet' } }))).toBe(235);
    expect(targetSkinLimit(partOf('test-point', [1, 1, 0.1]))).toBeNull();
  });
});
