/** Seconds of '6:01', '361' or '361 s'; null: none of them. */
export function parseClock(text: string): number | null {
  const match = /^\s*(?:(\d{1,4}):)?(\d{1,5})\s*s?\s*$/.exec(text);
  if (!match) return null;
  const seconds = Number(match[2]);
  if (match[1] === undefined) return seconds;
  return seconds < 60 ? 60 * Number(match[1]) + seconds : null;
}
