import { electrolyticClass } from '../packages/others.ts';
import { type NameContext, type Reading, type ReadSize, rectangle, round } from './reading.ts';

/**
 * Land pattern names after IPC-7351 (naming convention from memory): family, pitch P, lead span or body X, height,
 * dash and pins. Lengths in hundredths of a millimetre; two-ended chips in tenths ('RESC1608X50N').
 */
type Pattern = { pattern: RegExp; read: (match: RegExpExecArray) => { classId: string; size: ReadSize | null } };

const hundredths = (text: string | undefined): number => Number(text) / 100;
const START = '(?<![A-Z0-9])';

const CHIP_FAMILIES: Record<string, string> = {
  RES: 'chip-resistor',
  CAP: 'chip-capacitor',
  IND: 'chip-ferrite',
  BEAD: 'chip-ferrite',
  FUS: 'fuse',
  LED: 'led',
  DIO: 'diode',
  THM: 'ntc',
};

const largeCapacitor = (classId: string, size: ReadSize): string =>
  classId === 'chip-capacitor' && size.lengthMm * size.widthMm > 6 ? 'chip-capacitor-large' : classId;

function chip(family: string, size: ReadSize) {
  const classId = largeCapacitor(CHIP_FAMILIES[family], size);
  return { classId: classId === 'chip-ferrite' && size.lengthMm > 3.5 ? 'power-inductor' : classId, size };
}

/** Body of a two-row leaded package from its lead span and pins; leads take about 1 mm each side. */
function twoRows(pitch: number, span: number, height: number, pins: number): ReadSize {
  return rectangle(Math.max(1.6, (pins / 2) * pitch - 0.2), Math.max(1, span - 2), height);
}

/** 'SOT95P280X145-5N': pitch, lead span, height. The body is about 1.2 mm narrower than the span. */
function sot(pitch: string, span: string, height: string) {
  const width = Math.max(0.6, hundredths(span) - 1.2);
  return { classId: 'sot', size: rectangle(Math.max(1, hundredths(pitch) * 2 + 1), width, hundredths(height)) };
}

const PATTERNS: Pattern[] = [
  {
    pattern: new RegExp(`${START}(RES|CAP|IND|BEAD|FUS|LED|DIO|THM)S?C(\\d{2})(\\d{2})X(\\d{2,3})(?![0-9X])`),
    read: ([, family, l, w, h]) => chip(family, rectangle(Number(l) / 10, Number(w) / 10, hundredths(h))),
  },
  {
    pattern: new RegExp(`${START}(RES|CAP|IND|BEAD|FUS|LED|DIO|THM)S?C(\\d{2,4})X(\\d{2,4})X(\\d{2,4})`),
    read: ([, family, l, w, h]) => chip(family, rectangle(hundredths(l), hundredths(w), hundredths(h))),
  },
  {
    pattern: new RegExp(`${START}(?:RES|CAP|IND|LED)CA[VFX][A-Z]?(\\d+)P(\\d+)X(\\d+)X(\\d+)`),
    read: ([, , l, w, h]) => ({ classId: 'chip-array', size: rectangle(hundredths(l), hundredths(w), hundredths(h)) }),
  },
  {
    pattern: new RegExp(`${START}CAPMP?(\\d{2})(\\d{2})X(\\d+)`),
    read: ([, l, w, h]) => ({ classId: 'tantalum', size: rectangle(Number(l) / 10, Number(w) / 10, hundredths(h)) }),
  },
  {
    pattern: new RegExp(`${START}CAPAE(\\d+)X(\\d+)`),
    read: ([, d, h]) => {
      const diameter = Math.max(3, hundredths(d) - 0.3);
      return { classId: electrolyticClass(diameter), size: round(hundredths(d), hundredths(h)) };
    },
  },
  {
    pattern: new RegExp(`${START}(?:RES|DIO)MELF(\\d{2})(\\d{2})`),
    read: ([, l, w]) => ({ classId: 'melf', size: rectangle(Number(l) / 10, Number(w) / 10) }),
  },
  {
    pattern: new RegExp(`${START}(?:DIOM|SOD|SODFL)(\\d{2})(\\d{2})X(\\d+)`),
    read: ([, l, w, h]) => ({ classId: 'diode', size: rectangle(Number(l) / 10, Number(w) / 10, hundredths(h)) }),
  },
  {
    pattern: new RegExp(`${START}SOD(?:FL)?(\\d{2,3})X(\\d{2,3})X(\\d{2,3})`),
    read: ([, l, w, h]) => ({ classId: 'diode', size: rectangle(hundredths(l), hundredths(w), hundredths(h)) }),
  },
  {
    pattern: new RegExp(`${START}INDM?P?(\\d{2})(\\d{2})X(\\d+)`),
    read: ([, l, w, h]) => ({
      classId: 'power-inductor',
      size: rectangle(Number(l) / 10, Number(w) / 10, hundredths(h)),
    }),
  },
  {
    pattern: new RegExp(`${START}T?SOT(\\d+)P(\\d+)X(\\d+)`),
    read: ([, pitch, span, height]) => sot(pitch, span, height),
  },
  {
    pattern: new RegExp(`${START}T?SOT\\d+-\\d+P(\\d+)_(\\d+)X(\\d+)`),
    read: ([, pitch, span, height]) => sot(pitch, span, height),
  },
  {
    pattern: new RegExp(`${START}[TSMVH]?SO(?:IC|P|J)(\\d+)P(\\d+)X(\\d+)-(\\d+)`),
    read: ([, pitch, span, height, pins]) => ({
      classId: 'so',
      size: twoRows(hundredths(pitch), hundredths(span), hundredths(height), Number(pins)),
    }),
  },
  {
    pattern: new RegExp(`${START}[TLHCP]?QFP(\\d+)P(\\d+)X(\\d+)X(\\d+)`),
    read: ([, , a, b, h]) => ({
      classId: 'qfp',
      size: rectangle(hundredths(a) - 2, hundredths(b) - 2, hundredths(h)),
    }),
  },
  {
    pattern: new RegExp(`${START}P?L?CC(\\d+)P(\\d+)X(\\d+)X(\\d+)`),
    read: ([, , a, b, h]) => ({ classId: 'qfp', size: rectangle(hundredths(a), hundredths(b), hundredths(h)) }),
  },
  {
    pattern: new RegExp(`${START}[A-Z]{0,2}(?:QFN|SON|DFN)(\\d+)P(\\d+)X(\\d+)X(\\d+)`),
    read: ([, , l, w, h]) => ({ classId: 'qfn', size: rectangle(hundredths(l), hundredths(w), hundredths(h)) }),
  },
  {
    pattern: new RegExp(`${START}[A-Z]{0,2}BGA(\\d+)[CN]*(\\d+)P(\\d+)X(\\d+)_(\\d+)X(\\d+)X(\\d+)`),
    read: ([, , , , , l, w, h]) => ({ classId: 'bga', size: rectangle(hundredths(l), hundredths(w), hundredths(h)) }),
  },
  {
    pattern: new RegExp(`${START}(?:XTAL|OSC[A-Z]*)(\\d{3})X(\\d{3})X(\\d{2,3})`),
    read: ([, l, w, h]) => ({ classId: 'crystal', size: rectangle(hundredths(l), hundredths(w), hundredths(h)) }),
  },
];

/** Reads a name that follows IPC-7351; null when it does not. */
export function readStandardName({ name }: NameContext): Reading | null {
  for (const { pattern, read } of PATTERNS) {
    const match = pattern.exec(name);
    if (match) return { ...read(match), reason: { code: 'standard-name', fragment: match[0] } };
  }
  return null;
}
