import { chipByInch } from '../packages/chip-sizes.ts';
import { electrolyticClass } from '../packages/others.ts';
import { findPackage } from '../packages.ts';
import { chipSizeInName } from './chip-names.ts';
import { type NameContext, type ReadSize, rectangle, round, sizeInName, tenthsInName } from './reading.ts';

/** A family of package names: what in the name (in capitals) tells it, its class, and how its size is read. */
export type Family = {
  pattern: RegExp;
  classId: string | ((match: RegExpExecArray, context: NameContext) => string);
  size?: (match: RegExpExecArray, context: NameContext) => ReadSize | null;
};

const W = '(?<![A-Z])';

const librarySize = (name: string): ReadSize | null => {
  const one = findPackage(name);
  return one ? { shape: one.shape, lengthMm: one.lengthMm, widthMm: one.widthMm, heightMm: one.heightMm } : null;
};

const written = (_match: RegExpExecArray, { name }: NameContext): ReadSize | null => sizeInName(name);
const writtenOrTenths = (_match: RegExpExecArray, { name }: NameContext): ReadSize | null =>
  sizeInName(name) ?? tenthsInName(name);

/** 'SOIC-16', 'TSSOP14N': the written size, else the library's package of this family and pin count. */
const soSize = (match: RegExpExecArray, { name, pinCount }: NameContext): ReadSize | null => {
  const size = sizeInName(name);
  if (size) return size;
  const family = /TSSOP|MSOP|SSOP|TSOP/.exec(match[0])?.[0] ?? 'SOIC';
  const pins = Number(match[1] ?? pinCount ?? 0);
  const wide = /SOL|SOICW|WIDE|7\.5/.test(name) || pins > 16 ? 'W' : '';
  return librarySize(`${family}-${pins}${family === 'SOIC' ? wide : ''}`);
};

const sotSize = (match: RegExpExecArray, { name, pinCount }: NameContext): ReadSize | null => {
  const size = sizeInName(name);
  if (size || Number(match[2] ?? 0) > 8) return size;
  const pins = match[2] ?? (pinCount && pinCount > 3 ? String(pinCount) : '');
  return (match[1] === '23' && pins && librarySize(`SOT-23-${pins}`)) || librarySize(`SOT-${match[1]}`);
};

/** 'CP_Elec_6.3x7.7', 'CP_Radial_D10.0mm': diameter and, where written, height. */
const canSize = (_match: RegExpExecArray, { name }: NameContext): ReadSize | null => {
  const pair = /(\d+(?:\.\d+)?)X(\d+(?:\.\d+)?)/.exec(name);
  if (pair) return round(Number(pair[1]), Number(pair[2]));
  const diameter = /D(\d+(?:\.\d+)?)/.exec(name);
  return diameter ? round(Number(diameter[1]), null) : null;
};

const canClass = (match: RegExpExecArray, context: NameContext): string => {
  if (/RADIAL|AXIAL/.test(context.name)) return 'electrolytic-leaded';
  if (/POLY|HYBRID/.test(`${context.name} ${context.value.toUpperCase()}`)) return 'polymer-capacitor';
  return electrolyticClass(canSize(match, context)?.lengthMm ?? context.bodyMm?.lengthMm ?? 10);
};

/** A coin cell's diameter out of 'CR2032' or '20mm'; the holder is about 2 mm larger. */
const coinSize = (_match: RegExpExecArray, { name }: NameContext): ReadSize | null => {
  const diameter = /CR(\d{2})\d{2}/.exec(name)?.[1] ?? /(\d{1,2})(?:\.\d)?MM/.exec(name)?.[1];
  return diameter ? round(Number(diameter) + 2) : null;
};

/** Case sizes 3216, 3528, 6032, 7343 with the height in tenths: 'EIA-7343-31'. */
const tantalumSize = (_match: RegExpExecArray, { name }: NameContext): ReadSize | null => {
  const match = /(3216|3528|6032|7343)(?:-(\d{2}))?/.exec(name);
  if (!match) return sizeInName(name);
  const [length, width] = [Number(match[1].slice(0, 2)) / 10, Number(match[1].slice(2)) / 10];
  return rectangle(length, width, match[2] ? Number(match[2]) / 10 : null);
};

const arrayClass = (_match: RegExpExecArray, { value, name }: NameContext): string =>
  /E-?MMC|UFS|NAND|FLASH/.test(`${value.toUpperCase()} ${name}`)
    ? 'flash-memory'
    : /LID|FCBGA|HFCBGA/.test(name)
      ? 'bga-lidded'
      : 'bga';

/** Name families in the order they are tried. Names of outlines (SOT-23, TO-252...) are the trade's and the standards'. */
export const FAMILIES: readonly Family[] = [
  { pattern: /FIDUCIAL|(?<![A-Z])FID(?![A-Z])|LOGO|OSHW/, classId: 'mark-on-board', size: written },
  { pattern: /TEST_?POINT|TESTPAD|(?<![A-Z])TP_/, classId: 'test-point' },
  { pattern: /STAND_?OFF|MOUNT(?:ING)?_?HOLE|SPACER|BOHR/, classId: 'metal-hardware' },
  { pattern: /HEAT_?SINK/, classId: 'heat-sink', size: written },
  { pattern: new RegExp(`${W}(?:WLCSP|UCSP|DSBGA|XFBGA|CSP(?!G))`), classId: 'csp', size: written },
  { pattern: /[A-Z]*BGA[-_ ]?\d*|CSG\d+|(?<![A-Z])F[TGN]G?\d{3}(?![0-9A-Z])/, classId: arrayClass, size: written },
  { pattern: new RegExp(`${W}LGA`), classId: 'lga', size: written },
  { pattern: /SUPER_?CAP|EDLC|GOLDCAP/, classId: 'supercapacitor', size: canSize },
  { pattern: /COIN|(?<![A-Z])CR(?:1[0-9]|2[0-9])\d{2}|CELL_?HOLDER/, classId: 'coin-cell', size: coinSize },
  { pattern: /BATTERY|(?<![A-Z])BATT?(?![A-Z])|LI-?ION|LIPO/, classId: 'battery', size: written },
  { pattern: /ELEC_|ELKO|(?<![A-Z])CP_RADIAL|ALU?CAP|CAPACITOR_?ALU/, classId: canClass, size: canSize },
  {
    pattern: /TANTAL|EIA-?(?:3216|3528|6032|7343)|(?:3528|6032|7343)-\d{2}/,
    classId: 'tantalum',
    size: tantalumSize,
  },
  {
    pattern: /TRIM|(?<![A-Z])POT(?![A-Z])|POTENTIOMETER/,
    classId: 'trimmer',
    size: written,
  },
  { pattern: /CYLINDER|(?<![A-Z])(?:TF|MT)-?206|XTAL.*ROUND/, classId: 'crystal-cylinder', size: written },
  { pattern: /MEMS.*OSC|OSC.*MEMS/, classId: 'mems-oscillator', size: writtenOrTenths },
  {
    pattern: /CRYSTAL|XTAL|OSC+ILL?ATOR|OSZI|RESONATOR|(?<![A-Z])TC?XO|HC-?49/,
    classId: 'crystal',
    size: writtenOrTenths,
  },
  { pattern: /MICROPHONE|(?<![A-Z])MIC_/, classId: 'mems-microphone', size: written },
  { pattern: /CAMERA|LENS|IMAGE_?SENSOR/, classId: 'plastic-optics', size: written },
  { pattern: new RegExp(`${W}OPTO|PHOTOCOUPLER`), classId: 'optocoupler', size: written },
  {
    pattern: new RegExp(`(?:${W}|[0-9])LED(?:_|-| |(?=[0-9])|$)(?!.*DISPLAY)(?!(?:[_-]?)(?:0[2468]0|1206))`),
    classId: 'led',
    size: (_match, context) => sizeInName(context.name) ?? chipSizeInName(context),
  },
  { pattern: /(?<![0-9])([2-8])X(0402|0603)|ARRAY|RES_?NET|NETWORK/, classId: 'chip-array', size: chipArraySize },
  { pattern: /RELAY|(?<![A-Z])REL-/, classId: 'relay-leaded', size: written },
  { pattern: /TRANSFORMER|TRAFO|COMMON_?MODE|CHOKE/, classId: 'transformer', size: written },
  { pattern: /SW_DIP|DIP_?SWITCH|SLIDE|SW_SP[SD]T_SLIDE/, classId: 'slide-switch', size: written },
  { pattern: /(?<![A-Z])SW_|SWITCH|TACT|PUSH_?BUTTON/, classId: 'tact-switch', size: written },
  {
    pattern:
      /USB|RJ-?\d\d|MAG_?JACK|HEADER|(?<![A-Z])HDR|SOCKET|RECEPTACLE|CONN|TERMINAL|SCREW|(?<![A-Z])DB\d|FPC|FFC|CARD|BARREL|(?<![A-Z])U\.?FL|COAX|(?<![A-Z])SMA_|BNC|JTAG|IDC\d?|KEYM|M2_KEY|PLUG|PIN_?STRIP/,
    classId: 'connector-unknown',
    size: written,
  },
  {
    pattern: /POWERDI|D2?PAK|TO-?2[0-9]{2}|LFPAK|SOT-?_?(?:89|223)(?![0-9])/,
    classId: 'power-package',
    size: powerSize,
  },
  { pattern: new RegExp(`${W}SOD[-_]?(\\d{3})`), classId: 'diode', size: (m) => librarySize(`SOD-${m[1]}`) },
  {
    pattern: /(?<![A-Z])SM([ABC])(?![A-Z0-9])|DO-?214A([ABC])/,
    classId: 'diode',
    size: (m) => librarySize(`SM${m[1] ?? { A: 'B', B: 'C', C: 'A' }[m[2] as 'A' | 'B' | 'C']}`),
  },
  { pattern: /MELF/, classId: 'melf', size: written },
  {
    pattern: /(?<![A-Z])T?SOT[-_]?(23|143|323|343|353|363|523|553|563|666|723|883)(?![0-9])[-_]?(\d{1,2}(?![0-9]))?/,
    classId: (match) => (Number(match[2] ?? 0) > 8 ? 'so' : 'sot'),
    size: sotSize,
  },
  { pattern: /(?<![A-Z])T?SOT[-_]?25(?![0-9])/, classId: 'sot', size: () => librarySize('SOT-23-5') },
  { pattern: /(?<![A-Z])SC-?70(?:-(\d))?/, classId: 'sot', size: () => librarySize('SOT-323') },
  {
    pattern: /[A-Z]*(?:QFN|DFN|SON|LLP|MLF|MLP|LCC-?)(?![A-Z])[-_]?(\d+)?/,
    classId: 'qfn',
    size: leadlessSize,
  },
  { pattern: /[A-Z]*QFP[-_]?(\d+)?/, classId: 'qfp', size: qfpSize },
  { pattern: /PLCC[-_]?(\d+)?/, classId: 'qfp', size: written },
  {
    pattern: /(?<![A-Z])[A-Z]{0,2}(?:SOIC|SOIJ|SOP|SOJ|SSOP|SOL|SOA|SO|SM)[-_]?0{0,2}([1-9]\d?)(?![0-9])(?:[A-Z])?/,
    classId: 'so',
    size: soSize,
  },
  {
    pattern: /(?<![A-Z])SOT\d{2,3}-\d/,
    classId: (_m, { pinCount }) => (pinCount && pinCount < 7 ? 'sot' : 'so'),
    size: written,
  },
];

/** Families tried after the chip codes, whose letters they share. */
export const LATE_FAMILIES: readonly Family[] = [
  { pattern: /FUSE/, classId: 'fuse', size: written },
  { pattern: /(?<![A-Z])(?:L|IND|INDUCTOR)_/, classId: inductorClass, size: inductorSize },
  { pattern: /NTC|THERMISTOR/, classId: 'ntc', size: written },
  { pattern: /MODULE|WIFI/, classId: 'module-soldered', size: written },
];

/** '4x0603': four 0603 elements side by side, each as wide as a chip of this size; else the code in the name. */
function chipArraySize(_match: RegExpExecArray, context: NameContext): ReadSize | null {
  const counted = /([2-8])X(0402|0603)/.exec(context.name);
  const element = counted && chipByInch(counted[2]);
  return element
    ? rectangle(element.widthMm * Number(counted[1]), element.lengthMm, 0.5)
    : (sizeInName(context.name) ?? chipSizeInName(context));
}

/** 'QFN_5x5mm', or tenths right behind the family as in 'DFN1006'. */
function leadlessSize(_match: RegExpExecArray, { name }: NameContext): ReadSize | null {
  const coded = /(?:DFN|SON|QFN)(\d{2})(\d{2})(?![0-9])/.exec(name);
  return sizeInName(name) ?? (coded && rectangle(Number(coded[1]) / 10, Number(coded[2]) / 10));
}

function powerSize(match: RegExpExecArray, { name }: NameContext): ReadSize | null {
  const coded = /DI(\d{2})(\d{2})/.exec(name);
  if (coded) return rectangle(Number(coded[1]) / 10, Number(coded[2]) / 10, 0.8);
  return (
    sizeInName(name) ?? librarySize(match[0].replace('_', '-')) ?? librarySize(/D2PAK/.test(name) ? 'TO-263' : 'TO-252')
  );
}

function qfpSize(match: RegExpExecArray, { name, pinCount }: NameContext): ReadSize | null {
  const size = sizeInName(name);
  const pins = Number(match[1] ?? pinCount ?? 0);
  const usual: Record<number, number> = { 32: 7, 48: 7, 64: 10, 80: 12, 100: 14, 128: 14, 144: 20, 176: 24, 208: 28 };
  return size ?? (usual[pins] ? rectangle(usual[pins], usual[pins], 1.6) : null);
}

/** 'L_AB3015': usual inductor codes give side and height in tenths of a millimetre. */
function inductorSize(_match: RegExpExecArray, { name }: NameContext): ReadSize | null {
  const coded = /[A-Z](\d{2})(\d{2})(?![0-9])/.exec(name);
  return sizeInName(name) ?? (coded && rectangle(Number(coded[1]) / 10, Number(coded[1]) / 10, Number(coded[2]) / 10));
}

function inductorClass(match: RegExpExecArray, context: NameContext): string {
  const size = inductorSize(match, context) ?? context.bodyMm;
  return size && size.lengthMm <= 2.1 ? 'chip-ferrite' : 'power-inductor';
}
