import { CHIP_SIZES, type ChipSize, chipByMetric, chipsOfCode } from '../packages/chip-sizes.ts';
import { chipHeight } from '../packages/chips.ts';
import { type NameContext, type Reading, type ReadSize, rectangle } from './reading.ts';

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
  DS: 'led',
  LED: 'led',
  RN: 'chip-array',
  RP: 'chip-array',
  RA: 'chip-array',
  CN: 'chip-array',
  RV: 'ntc',
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

/** The body of the chip code in a name, whatever the part is; null when there is none. */
export function chipSizeInName(context: NameContext): ReadSize | null {
  const code = CODE_ALONE.exec(context.name)?.[1];
  const read = code ? sizeOfCode(code, context) : null;
  return read && rectangle(read.size.lengthMm, read.size.widthMm);
}

/** Reads a chip code such as 'C_0402_1005Metric', 'RES0805', '0603' with the designator R7; null when there is none. */
export function readChipName(context: NameContext): Reading | null {
  const withKind = WITH_KIND.exec(context.name);
  const code = withKind?.[2] ?? CODE_ALONE.exec(context.name)?.[1];
  if (!code) return null;
  const kind = withKind && KINDS.find((one) => one.words.includes(withKind[1]));
  const classId = classOf(kind?.classId, context.prefix);
  if (!classId) return null;
  const read = sizeOfCode(code, context);
  if (!read) return null;
  const { lengthMm, widthMm, inch } = read.size;
  const heightOf = KINDS.find((one) => one.classId === classId)?.heightOf;
  const height = heightOf ? chipHeight(heightOf, inch) : null;
  return { classId: sized(classId, read.size), size: rectangle(lengthMm, widthMm, height), reason: read.reason };
}

/** Boards put beads and capacitors on resistor lands: these designators win over the name, others only fill in. */
const SURE_PREFIXES = new Set(['R', 'C', 'L', 'FB', 'F']);

function classOf(named: string | undefined, prefix: string): string | undefined {
  if (named && named !== 'led' && SURE_PREFIXES.has(prefix)) return BY_PREFIX[prefix];
  return named ?? BY_PREFIX[prefix] ?? (prefix.length === 2 ? BY_PREFIX[prefix[0]] : undefined);
}

function sized(classId: string, { lengthMm, widthMm }: ChipSize): string {
  if (classId === 'chip-capacitor' && lengthMm * widthMm > 6) return 'chip-capacitor-large';
  return classId === 'chip-ferrite' && lengthMm > 3.5 ? 'power-inductor' : classId;
}
