import { describe, expect, it } from 'vitest';
import {
  DEFAULT_SHIELD,
  GAP_AIR_WMK,
  SHIELDS,
  shieldById,
  shieldResistance,
} from '../../../../shared-types/library/shields.ts';

const resistance = (id: string) => shieldResistance(shieldById(id)!).m2KW;
/** Share by which a stack cuts a film of 100 W/m2K. */
const cut = (id: string) => 1 - 1 / (1 + 100 * resistance(id));

describe('shields', () => {
  it('adds its layers and gaps as resistances in series', () => {
    expect(resistance('foil-tent')).toBeCloseTo(0.0015 / GAP_AIR_WMK + 0.00005 / 200, 9);
    expect(resistance('tape-3')).toBeCloseTo(3 * resistance('tape'), 12);
    expect(shieldResistance(shieldById('fibre-foil')!)).toMatchObject({ arealMassJm2K: 521, polishedOutside: true });
    expect(shieldResistance(shieldById('fibre')!).polishedOutside).toBe(false);
  });

  it('takes still air from the air formula of the heat model at 150 C', () => {
    const kelvin = 423.15;
    const formula = (2.64638e-3 * kelvin ** 1.5) / (kelvin + 245.4 * 10 ** (-12 / kelvin));
    expect(GAP_AIR_WMK).toBeCloseTo(formula, 4);
  });

  it('lets flat tape do little and a gap much (IPC TechNet 2007; ranking in SMT Magazine, April 2015)', () => {
    expect(cut('tape')).toBeLessThan(0.06);
    expect(cut('tape-3')).toBeLessThan(0.15);
    expect(cut('foil-flat')).toBeLessThan(0.01);
    for (const id of ['foil-tent', 'cap', 'fibre']) expect(cut(id), id).toBeGreaterThan(0.7);
    expect(resistance('fibre')).toBeGreaterThan(resistance('cap'));
    expect(resistance('tape-3')).toBeLessThan(resistance('cap'));
  });

  it('has unique ids, a caution for each, and holds the default', () => {
    expect(new Set(SHIELDS.map((shield) => shield.id)).size).toBe(SHIELDS.length);
    for (const shield of SHIELDS) expect(shield.notGoodFor.length).toBeGreaterThan(10);
    expect(shieldById(DEFAULT_SHIELD)).toBeDefined();
    expect(shieldById('none-such')).toBeUndefined();
  });
});
