const LENGTH = 20_000_000;

/** Milliseconds of one pass over a text of 20 MB on this machine, as busy as it is just now. */
function passMs(text: string): number {
  const start = performance.now();
  let lines = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines++;
  for (let at = 0; at < text.length; at++) if (text.charCodeAt(at) === 120) lines++;
  return lines > 0 ? performance.now() - start : Number.NaN;
}

/**
 * How many passes over 20 MB some work takes: a bound on it holds on slow and busy machines alike, while work that grows with the
 * square of its input goes far beyond any. The slower of a pass before and one after it counts.
 */
export function passesOf(work: () => void): number {
  const text = `${'x'.repeat(LENGTH - 1)}\n`;
  const before = passMs(text);
  const start = performance.now();
  work();
  const taken = performance.now() - start;
  return taken / Math.max(before, passMs(text));
}
