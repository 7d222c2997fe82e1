import { CHIP_SIZES, type ChipSize, chipByInch, chipByMetric, chipsOfCode } from '../packages/chip-sizes.ts';
import { chipHeight } from '../packages/chips.ts';
import { type NameContext, type Reading, rectangle } from './reading.ts';

type Kind = { words: readonly string[]; classId: string; heightOf: string | null };

/** What the letters before a chip code say; the longest words first. */
const KINDS: readonly Kind[] = [
  { words: ['LED'], classId: 'led', heightOf: 'LED' },
  { words: ['RESISTOR', 'RES', 'SMR', 'R'], classId: 'chip-resistor', heightOf: 'R' },
  { words: ['CAPACITOR', 'CAP', 'SMC', 'C'], classId: 'chip-capacitor', heightOf: 'C' },
  { words: ['FERRITE', 'BEAD', 'FB', 'INDUCTOR', 'IND', 'SML', 'L'], classId: 'chip-ferrite', heightOf: 'L' },
  { words: ['FUSE', 'FUS', 'F'], classId: 'fuse', heightOf: 'F' },
  { words: ['DIODE', 'D'], classId: 'diode', heightOf: null },
  { words: ['NTC', 'PTC', 'TH', 'RT'], classId: 'ntc', heightOf: null },
];

/** What a designator says when the name gives only a size ('0805' on C12). */
const BY_PREFIX: Record<string, string> = {
  R: 'chip-resistor',
  C: 'chip-capacitor',
  L: 'chip-ferrite',
  FB: 'chip-ferrite',
  FR: 'chip-ferrite',
  B: 'chip-ferrite',
  F: 'fuse',
  D: 'diode',
  LED: 'led',
  RN: 'chip-array',
  RP: 'chip-array',
  RA: 'chip-array',
  CN: 'chip-array',
  TH: 'ntc',
  NTC: 'ntc',
};

const CODES = [...new Set(CHIP_SIZES.flatMap(({ inch, metric }) => [inch, metric]))].sort(
  (a, b) => b.length - a.length,
);
const KIND_WORDS = KINDS.flatMap(({ words }) => words).sort((a, b) => b.length - a.length);
const WITH_KIND = new RegExp(`(?<![A-Z])(${KIND_WORDS.join('|')})[_\\- ]?(${CODES.join('|')})(?![0-9])`);
const CODE_ALONE = new RegExp(`(?<![0-9.X])(${CODES.join('|')})(?![0-9.])`);
const METRIC = /(?<![0-9])(\d{4,5})_?METRIC/;

const words = ({ lengthMm, widthMm }: ChipSize): string => `${lengthMm} x ${widthMm}`;

function sizeOfCode(code: string, { name, bodyMm }: NameContext): { size: ChipSize; reason: Reading['reason'] } | null {
  const stated = METRIC.exec(name);
  const byMetric = stated && chipByMetric(stated[1]);
  if (byMetric) return { size: byMetric, reason: { code: 'chip', fragment: stated[0], size: words(byMetric) } };
  const candidates = chipsOfCode(code);
  if (candidates.length === 0) return null;
  if (candidates.length === 1)
    return { size: candidates[0], reason: { code: 'chip', fragment: code, size: words(candidates[0]) } };
  if (bodyMm) {
    const size = closest(candidates, Math.max(bodyMm.lengthMm, bodyMm.widthMm));
    return { size, reason: { code: 'chip-pads', fragment: code, size: words(size) } };
  }
  const [taken, other] = candidates;
  return { size: taken, reason: { code: 'chip-unsure', fragment: code, size: words(taken), other: words(other) } };
}

/** The size whose body, or whose pads a third longer, comes closest in proportion. */
function closest(candidates: readonly ChipSize[], extentMm: number): ChipSize {
  const distance = ({ lengthMm }: ChipSize) => Math.abs(Math.log(extentMm / (1.3 * lengthMm)));
  return candidates.reduce((best, one) => (distance(one) < distance(best) ? one : best));
}

/** Reads a chip code such as 'C_0402_1005Metric', 'RES0805', '0603' with the designator R7; null when there is none. */
export function readChipName(context: NameContext): Reading | null {
  const withKind = WITH_KIND.exec(context.name);
  const code = withKind?.[2] ?? CODE_ALONE.exec(context.name)?.[1];
  if (!code) return null;
  const kind = withKind && KINDS.find((one) => one.words.includes(withKind[1]));
  const classId = kind?.classId ?? BY_PREFIX[context.prefix];
  if (!classId) return null;
  const read = sizeOfCode(code, context);
  if (!read) return null;
  const { lengthMm, widthMm, inch } = read.size;
  const isArray = /ARRAY|(?<![0-9])[2-8]X0[46]0[23]|NETWORK/.test(context.name) || classId === 'chip-array';
  if (isArray) return { classId: 'chip-array', size: arraySize(context.name, read.size), reason: read.reason };
  const heightOf = kind?.heightOf ?? KINDS.find((one) => one.classId === classId)?.heightOf;
  const height = heightOf ? chipHeight(heightOf, inch) : null;
  return { classId: sized(classId, read.size), size: rectangle(lengthMm, widthMm, height), reason: read.reason };
}

function sized(classId: string, { lengthMm, widthMm }: ChipSize): string {
  if (classId === 'chip-capacitor' && lengthMm * widthMm > 6) return 'chip-capacitor-large';
  return classId === 'chip-ferrite' && lengthMm > 3.5 ? 'power-inductor' : classId;
}

/** '4x0603' is four 0603 elements side by side in a body of twice its width each; else the size as written. */
function arraySize(name: string, element: ChipSize) {
  const count = Number(/(?<![0-9])([2-8])X0[46]0[23]/.exec(name)?.[1] ?? 0);
  if (!count) return rectangle(element.lengthMm, element.widthMm, 0.5);
  const inch = chipByInch(element.inch) ?? element;
  return rectangle(inch.widthMm * count, inch.lengthMm, 0.5);
}
