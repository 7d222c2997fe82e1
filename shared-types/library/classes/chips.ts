import type { PartClass } from '../library-types.ts';
import { found, J_STD_075, memory } from '../sources.ts';
import { define, limit } from './define.ts';

const reflow = limit(260, J_STD_075);
const MLCC = 'Murata GRM caution 4-1: reflow peak 240-260 °C';

/** Small two-ended and array chips. */
export const CHIP_CLASSES: readonly PartClass[] = [
  define({
    id: 'chip-resistor',
    name: 'Chip resistor',
    mark: 'R',
    heightMm: 0.45,
    material: 'alumina',
    joint: 'wide',
    body: reflow,
    smallPart: true,
  }),
  define({
    id: 'chip-array',
    name: 'Chip resistor or capacitor array',
    mark: 'RN',
    heightMm: 0.5,
    material: 'alumina',
    joint: 'wide',
    body: reflow,
    smallPart: true,
  }),
  define({
    id: 'chip-capacitor',
    name: 'Ceramic chip capacitor, up to 1206',
    mark: 'C',
    heightMm: 0.8,
    material: 'titanate',
    joint: 'wide',
    body: limit(260, found(`${MLCC}; solder to part at most 190 K up to 1206`)),
    smallPart: true,
  }),
  define({
    id: 'chip-capacitor-large',
    name: 'Ceramic chip capacitor, 1210 and larger',
    mark: 'C',
    heightMm: 2,
    material: 'titanate',
    joint: 'wide',
    body: limit(260, found(`${MLCC}; solder to part at most 130 K from 1210`)),
  }),
  define({
    id: 'chip-ferrite',
    name: 'Chip ferrite bead or inductor',
    mark: 'L',
    heightMm: 0.85,
    material: 'ferrite',
    joint: 'wide',
    body: limit(260, found('Chip bead data sheet: solder heat 260 ± 10 °C, 10 s', 'M')),
    smallPart: true,
  }),
  define({
    id: 'ntc',
    name: 'Chip thermistor',
    mark: 'N',
    heightMm: 0.8,
    material: 'titanate',
    joint: 'wide',
    body: limit(260, found('TDK B57820M: J-STD-020D, three cycles')),
    smallPart: true,
  }),
  define({
    id: 'fuse',
    name: 'Chip fuse',
    mark: 'F',
    heightMm: 0.7,
    material: 'titanate',
    joint: 'wide',
    body: limit(260, J_STD_075),
  }),
  define({
    id: 'trimmer',
    name: 'Trimmer, potentiometer or trimming capacitor',
    mark: 'RV',
    heightMm: 3,
    material: 'plastic',
    joint: 'medium',
    skin: limit(240, memory('SMD trimmers: 240-260 °C peak, the lower end taken', 'L')),
  }),
];
