import type { NameContext, Reading } from './reading.ts';

/** Usual class letters of designators (IEEE 315 and shop habit, from memory); what may be worse than it looks is judged so. */
const BY_PREFIX: Record<string, string> = {
  R: 'chip-resistor',
  C: 'chip-capacitor',
  L: 'power-inductor',
  FB: 'chip-ferrite',
  RN: 'chip-array',
  RP: 'chip-array',
  RA: 'chip-array',
  RV: 'trimmer',
  VR: 'trimmer',
  POT: 'trimmer',
  D: 'diode',
  CR: 'diode',
  Z: 'diode',
  TVS: 'diode',
  LED: 'led',
  DS: 'led',
  Q: 'sot',
  VT: 'sot',
  U: 'unknown',
  IC: 'unknown',
  Y: 'crystal',
  XT: 'crystal',
  XTAL: 'crystal',
  XO: 'crystal',
  G: 'crystal',
  J: 'connector-unknown',
  P: 'connector-unknown',
  X: 'connector-unknown',
  CN: 'connector-unknown',
  CON: 'connector-unknown',
  JP: 'connector-unknown',
  XP: 'connector-unknown',
  XS: 'connector-unknown',
  K: 'relay-leaded',
  RL: 'relay-leaded',
  RLY: 'relay-leaded',
  REL: 'relay-leaded',
  T: 'transformer',
  TR: 'transformer',
  S: 'tact-switch',
  SW: 'tact-switch',
  BT: 'battery',
  BAT: 'battery',
  F: 'fuse',
  TP: 'test-point',
  FID: 'mark-on-board',
  SHLD: 'metal-can',
  H: 'metal-hardware',
  MH: 'metal-hardware',
  MK: 'mems-microphone',
  MIC: 'mems-microphone',
};

/** Two-letter designators nobody agreed on: the first letter still tells these ('DZ4', 'CN2', 'XA1'). */
const BY_FIRST_LETTER: Record<string, string> = {
  R: 'chip-resistor',
  C: 'chip-capacitor',
  L: 'power-inductor',
  D: 'diode',
  Q: 'sot',
  J: 'connector-unknown',
  X: 'connector-unknown',
};

/** An integrated circuit of which only size and pins are known: few pins make it small, else nobody knows. */
function circuitClass({ pinCount, bodyMm }: NameContext): string {
  if (!pinCount || !bodyMm) return 'unknown';
  const area = bodyMm.lengthMm * bodyMm.widthMm;
  if (pinCount <= 6 && area < 14) return 'sot';
  if (pinCount <= 100 && area < 900) return 'so';
  return 'unknown';
}

/** Reads the designator when the package name said nothing; null for letters nobody agreed on. */
export function readRefdes(context: NameContext): Reading | null {
  const { prefix, bodyMm } = context;
  const classId = BY_PREFIX[prefix] ?? (prefix.length === 2 ? BY_FIRST_LETTER[prefix[0]] : undefined);
  if (!classId) return null;
  if (classId === 'unknown') {
    const circuit = circuitClass(context);
    return circuit === 'unknown' ? null : { classId: circuit, size: null, reason: { code: 'refdes-and-size', prefix } };
  }
  const large = bodyMm && Math.max(bodyMm.lengthMm, bodyMm.widthMm) > 4.5;
  if (classId === 'chip-capacitor' && large)
    return { classId: 'electrolytic-medium', size: null, reason: { code: 'refdes-and-size', prefix } };
  if (classId === 'chip-capacitor' && bodyMm && Math.min(bodyMm.lengthMm, bodyMm.widthMm) > 2.2)
    return { classId: 'chip-capacitor-large', size: null, reason: { code: 'refdes-and-size', prefix } };
  if (classId === 'power-inductor' && bodyMm && Math.max(bodyMm.lengthMm, bodyMm.widthMm) < 3)
    return { classId: 'chip-ferrite', size: null, reason: { code: 'refdes-and-size', prefix } };
  return { classId, size: null, reason: { code: 'refdes', prefix } };
}
