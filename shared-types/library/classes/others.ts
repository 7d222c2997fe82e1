import type { PartClass } from '../library-types.ts';
import { assumption } from '../sources.ts';
import { define, limit } from './define.ts';

/** Metal and mechanical parts, and the cautious class for what nobody knows yet. */
export const OTHER_CLASSES: readonly PartClass[] = [
  define({
    id: 'metal-can',
    name: 'Part in a metal can',
    mark: 'X',
    heightMm: 2,
    material: 'steelShell',
    joint: 'medium',
  }),
  define({ id: 'heat-sink', name: 'Heat sink', mark: 'HS', heightMm: 8, material: 'aluminium', joint: 'medium' }),
  define({
    id: 'test-point',
    name: 'Test point',
    mark: 'TP',
    heightMm: 0.2,
    material: 'aluminium',
    joint: 'wide',
    smallPart: true,
  }),
  define({
    id: 'mark-on-board',
    name: 'Mark, fiducial or logo: no body',
    mark: 'FM',
    heightMm: 0.05,
    material: 'mould',
    joint: 'wide',
    smallPart: true,
  }),
  define({
    id: 'metal-hardware',
    name: 'Stand-off, nut or other metal hardware',
    mark: 'H',
    heightMm: 4,
    material: 'aluminium',
    joint: 'medium',
  }),
  define({
    id: 'unknown',
    name: 'Not known',
    mark: '?',
    heightMm: 1.5,
    material: 'mould',
    joint: 'medium',
    skin: limit(200, assumption('Class not known: as a connector of unknown plastic until somebody says')),
    reflowRated: false,
  }),
];
