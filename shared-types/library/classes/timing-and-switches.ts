import type { PartClass } from '../library-types.ts';
import { found, memory } from '../sources.ts';
import { define, limit } from './define.ts';

/** Crystals, oscillators, MEMS, optics and switches. */
export const TIMING_AND_SWITCH_CLASSES: readonly PartClass[] = [
  define({
    id: 'crystal',
    name: 'Crystal or oscillator, SMD',
    mark: 'Y',
    heightMm: 0.8,
    material: 'ceramicCan',
    joint: 'medium',
    body: limit(260, found('HC-49/SMD data sheet: 260 °C, 20-40 s, three times at most', 'M')),
  }),
  define({
    id: 'crystal-cylinder',
    name: 'Tuning-fork crystal in a cylinder',
    mark: 'Y',
    heightMm: 2.1,
    material: 'steelShell',
    joint: 'leads',
    body: limit(150, memory('Epson C-type caution: can body 150 °C at most')),
    reflowRated: false,
  }),
  define({
    id: 'mems-oscillator',
    name: 'MEMS oscillator or motion sensor',
    mark: 'Y',
    heightMm: 0.9,
    material: 'mould',
    joint: 'wide',
    body: limit(260, memory('260 °C, three times; may drift', 'L')),
  }),
  define({
    id: 'mems-microphone',
    name: 'MEMS microphone or pressure sensor with a port',
    mark: 'MK',
    heightMm: 1,
    material: 'ceramicCan',
    joint: 'wide',
    body: limit(
      260,
      found('Knowles SPH1642HT5H-1: 260 °C, three cycles; no air into the port, no vacuum, no cleaning'),
    ),
  }),
  define({
    id: 'plastic-optics',
    name: 'Camera module or plastic lens',
    mark: 'O',
    heightMm: 5,
    material: 'plastic',
    joint: 'connector',
    body: limit(70, memory('Not reflowable: 70-85 °C, the lower end taken', 'L')),
    reflowRated: false,
    alwaysRemove: true,
  }),
  define({
    id: 'tact-switch',
    name: 'Tact switch',
    mark: 'S',
    heightMm: 3.5,
    material: 'plastic',
    joint: 'connector',
    skin: limit(260, found('Alps tact switches: 260 °C at most 3 s, above 230 °C at most 40 s, twice')),
  }),
  define({
    id: 'slide-switch',
    name: 'Slide, DIP or detector switch',
    mark: 'S',
    heightMm: 3,
    material: 'plastic',
    joint: 'connector',
    skin: limit(240, found('Alps slide and detector switches: 240-260 °C for 3 s; the lower end taken')),
  }),
];
