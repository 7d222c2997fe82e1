import { describe, expect, it } from 'vitest';
import { offerPackages, type PackageOffer } from '../../../../shared-types/rules/package-offers.ts';

const first = (text: string, refdes = ''): PackageOffer => offerPackages(text, [], refdes)[0];

describe('packages for typed words', () => {
  // Body sizes after the standards that name them: chip sizes EIA 0402; JEDEC MS-012 AA (SOIC-8), MO-220 (QFN 7 x 7),
  // MO-153 (TSSOP-20), MO-178 (SOT-23-5); from memory.
  it.each([
    ['c 0402', 'C 0402', 1, 0.5],
    ['C0402', 'C 0402', 1, 0.5],
    ['BGA 17x17 0.8', 'BGA 17x17 0.8', 17, 17],
    ['bga 17 × 17 .8', 'BGA 17x17 0.8', 17, 17],
    ['soic8', 'SOIC-8', 4.9, 3.9],
    ['QFN 7x7', 'QFN-48 7x7', 7, 7],
    ['tssop 20', 'TSSOP-20', 6.5, 4.4],
    ['sot23-5', 'SOT-23-5', 2.9, 1.6],
    ['3.2x2.5 crystal', 'Crystal 3.2x2.5', 3.2, 2.5],
    ['5x3.2 crystal', 'Crystal 5.0x3.2', 5, 3.2],
    ['elko 10x10.2', 'Electrolytic 10x10.2', 10, 10],
  ])('%s is %s', (text, name, lengthMm, widthMm) => {
    expect(first(text)).toMatchObject({ name, lengthMm, widthMm, from: 'library' });
  });

  it('lets the designator tip the scale where the size says too little', () => {
    expect(first('0402', 'C12').name).toBe('C 0402');
    expect(first('0402', 'R3').name).toBe('R 0402');
  });

  it('makes a package of a written size: a can by diameter and height, a free body with its height', () => {
    expect(first('electrolytic 10x12')).toMatchObject({
      shape: 'round',
      lengthMm: 10,
      widthMm: 10,
      heightMm: 12,
      classId: 'electrolytic-medium',
      from: 'typed',
    });
    expect(first('4,5 x 3,2 x 1,1')).toMatchObject({ lengthMm: 4.5, widthMm: 3.2, heightMm: 1.1, from: 'typed' });
    expect(offerPackages('4.5x3.2').map((one) => one.name)).toContain('C 1812');
    expect(first('QFN 7.4x7.4')).toMatchObject({ lengthMm: 7.4, classId: 'qfn', from: 'typed' });
  });

  it('reads a name of IPC-7351', () => {
    expect(first('RESC1608X50N')).toMatchObject({
      lengthMm: 1.6,
      widthMm: 0.8,
      heightMm: 0.5,
      classId: 'chip-resistor',
    });
  });

  it('offers own packages before built-in ones, and nothing for words that say nothing', () => {
    const own: PackageOffer = { ...first('SOIC-8'), name: 'SOIC8 padded', from: 'board' };
    expect(offerPackages('soic-8', [own])[0].from).toBe('board');
    expect(offerPackages('zzz')).toEqual([]);
    expect(first('pin header 1x6').name).toBe('Pin header 1x06 2.54');
  });
});
