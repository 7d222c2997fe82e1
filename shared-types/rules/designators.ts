/** Compares names with their numbers read as numbers: C2 before C10. No locale: the same on every machine. */
export function naturalOrder(a: string, b: string): number {
  const left = a.match(/\d+|\D+/g) ?? [];
  const right = b.match(/\d+|\D+/g) ?? [];
  for (let index = 0; index < Math.min(left.length, right.length); index++) {
    const [one, other] = [left[index], right[index]];
    const byNumber = /^\d/.test(one) && /^\d/.test(other) ? Number(one) - Number(other) : 0;
    if (byNumber !== 0) return byNumber;
    if (one !== other && !(/^\d/.test(one) && /^\d/.test(other))) return one < other ? -1 : 1;
  }
  return left.length - right.length;
}

/** C1, C2, C3, R7 as 'C1-C3, R7'. */
export function designatorRanges(sorted: readonly string[]): string {
  const groups: { prefix: string; from: number; to: number; text: string }[] = [];
  for (const refdes of sorted) {
    const match = /^(.*?)([1-9]\d{0,8})$/.exec(refdes);
    const last = groups.at(-1);
    const number = match ? Number(match[2]) : Number.NaN;
    if (match && last && last.prefix === match[1] && number === last.to + 1) {
      last.to = number;
      const joint = last.to === last.from + 1 ? ', ' : '–';
      last.text = `${last.prefix}${last.from}${joint}${refdes}`;
    } else groups.push({ prefix: match?.[1] ?? refdes, from: number, to: number, text: refdes });
  }
  return groups.map(({ text }) => text).join(', ');
}
