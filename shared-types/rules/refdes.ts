/** A designator as letters and number: 'C12' gives 'C' and 12; null when no number ends it. */
export function readNumbered(refdes: string): { prefix: string; number: number } | null {
  const match = /^(.*?)(\d{1,6})$/.exec(refdes.trim());
  return match ? { prefix: match[1], number: Number(match[2]) } : null;
}

/**
 * The designator itself when it is free, else the next free number of its letters, counted upwards from it.
 * A name without a number is counted from 1.
 */
export function freeRefdes(wanted: string, taken: ReadonlySet<string>): string {
  const name = wanted.trim();
  if (name !== '' && !taken.has(name)) return name;
  const { prefix, number } = readNumbered(name) ?? { prefix: name || 'X', number: 0 };
  let next = number + 1;
  while (taken.has(`${prefix}${next}`)) next += 1;
  return `${prefix}${next}`;
}

/** The first free number of the given letters, one above the highest in use: 'C' on a board with C1, C7 gives 'C8'. */
export function nextOfPrefix(prefix: string, taken: Iterable<string>): string {
  let highest = 0;
  for (const refdes of taken) {
    const read = readNumbered(refdes);
    if (read?.prefix === prefix) highest = Math.max(highest, read.number);
  }
  return `${prefix}${highest + 1}`;
}

/** The designators that follow `first`, as many as wanted, all free and different. */
export function freeSeries(first: string, count: number, taken: ReadonlySet<string>): string[] {
  const used = new Set(taken);
  const series: string[] = [];
  let wanted = first;
  for (let index = 0; index < count; index++) {
    const refdes = freeRefdes(wanted, used);
    used.add(refdes);
    series.push(refdes);
    wanted = refdes;
  }
  return series;
}

/** Letters that designators of a class usually begin with (IEEE 315 and shop habit, from memory). */
const PREFIXES: readonly (readonly [RegExp, string])[] = [
  [/^chip-resistor|^chip-array|^melf/, 'R'],
  [/capacitor|electrolytic|tantalum|^film-/, 'C'],
  [/^chip-ferrite/, 'FB'],
  [/inductor/, 'L'],
  [/^ntc|^trimmer/, 'RV'],
  [/^fuse/, 'F'],
  [/^led$|^diode/, 'D'],
  [/^sot|^power-package/, 'Q'],
  [/^crystal|^mems-oscillator/, 'Y'],
  [/^connector|^module-on-connector/, 'J'],
  [/^relay/, 'K'],
  [/^transformer/, 'T'],
  [/switch/, 'SW'],
  [/cell|^battery/, 'BT'],
  [/^test-point/, 'TP'],
  [/^mark-on-board/, 'FID'],
  [/^metal-hardware/, 'H'],
  [/^mems-microphone/, 'MK'],
];

/** The letters for a class; integrated circuits and what nothing tells are 'U'. */
export const prefixOfClass = (classId: string): string =>
  PREFIXES.find(([pattern]) => pattern.test(classId))?.[1] ?? 'U';
