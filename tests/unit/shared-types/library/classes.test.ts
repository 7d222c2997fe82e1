import { describe, expect, it } from 'vitest';
import { classById, isClassId, PART_CLASSES } from '../../../../shared-types/library/classes.ts';
import { PREHEATERS, preheaterById } from '../../../../shared-types/library/preheaters.ts';

describe('part classes', () => {
  it('have unique ids and figures in a believable range', () => {
    expect(new Set(PART_CLASSES.map((one) => one.id)).size).toBe(PART_CLASSES.length);
    for (const one of PART_CLASSES) {
      expect(one.heatCapacityJm3K, one.id).toBeGreaterThanOrEqual(1e6);
      expect(one.heatCapacityJm3K, one.id).toBeLessThanOrEqual(4e6);
      expect(one.jointWm2K, one.id).toBeGreaterThanOrEqual(200);
      expect(one.conductivityWmK, one.id).toBeGreaterThan(0.1);
      expect(one.defaultHeightMm, one.id).toBeGreaterThan(0);
      expect(one.mark.length, one.id).toBeLessThanOrEqual(2);
      expect(one.source.text.length, one.id).toBeGreaterThan(5);
    }
  });

  it('carry a source with every limit, and say when it is from memory', () => {
    for (const one of PART_CLASSES)
      for (const limit of [one.bodyLimit, one.skinLimit])
        if (limit && limit !== 'by-volume') {
          expect(limit.source.text.length, one.id).toBeGreaterThan(10);
          expect(limit.source.text.includes('from memory') || limit.source.how !== 'memory', one.id).toBe(true);
        }
  });

  it('always remove cells, batteries, modules on connectors, plastic optics and supercapacitors', () => {
    const ids = PART_CLASSES.filter((one) => one.alwaysRemove).map((one) => one.id);
    expect(ids.sort()).toEqual([
      'battery',
      'coin-cell',
      'lithium-cell',
      'module-on-connector',
      'plastic-optics',
      'supercapacitor',
    ]);
    for (const one of PART_CLASSES) if (one.alwaysRemove) expect(one.reflowRated, one.id).toBe(false);
  });

  it('count standard electrolytics as good for one reflow (Panasonic: 1x), chips as parts that may be left', () => {
    for (const id of ['electrolytic-small', 'electrolytic-medium', 'electrolytic-large'])
      expect(classById(id).oneReflow, id).toBe(true);
    for (const id of ['chip-resistor', 'chip-capacitor', 'chip-ferrite', 'chip-array'])
      expect(classById(id), id).toMatchObject({ smallPart: true, reflowRated: true, oneReflow: false });
  });

  it('know what has balls under its body', () => {
    const arrays = PART_CLASSES.filter((one) => one.arrayPart).map((one) => one.id);
    expect(arrays.sort()).toEqual(['bga', 'bga-lidded', 'csp', 'flash-memory', 'lga']);
  });

  it('give the cautious class for an id nobody knows', () => {
    expect(classById('no-such-class')).toMatchObject({ id: 'unknown', reflowRated: false });
    expect(isClassId('no-such-class')).toBe(false);
    expect(isClassId('bga')).toBe(true);
  });
});

describe('preheaters', () => {
  it('carry film and lag of the heat model page, section 3 (assumptions of ours)', () => {
    expect(PREHEATERS.map((one) => [one.id, one.filmWm2K, one.lagS])).toEqual([
      ['ceramic', 25, 120],
      ['quartz', 25, 40],
      ['halogen', 25, 10],
      ['hot-air', 35, 60],
    ]);
    expect(preheaterById('halogen').lagS).toBe(10);
  });
});
