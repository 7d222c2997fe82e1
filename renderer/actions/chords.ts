/** What of a key event makes a chord. */
export type KeyPress = Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>;

/**
 * The chords a key press stands for. Letters count whatever their case; a sign that needs Shift on some keyboards
 * ('?', '+') is named without Shift; Shift with a digit also counts by the digit's key, because `key` then holds the
 * sign above it, which differs from country to country.
 */
export function chordsOf(press: KeyPress): string[] {
  const control = press.ctrlKey || press.metaKey ? 'Ctrl+' : '';
  const alt = press.altKey ? 'Alt+' : '';
  const shift = press.shiftKey ? 'Shift+' : '';
  const { key } = press;
  if (/^[a-z]$/i.test(key)) return [`${control}${alt}${shift}${key.toUpperCase()}`];
  if (key.length > 1) return [`${control}${alt}${shift}${key}`];
  const chords = [`${control}${alt}${key === ' ' ? 'Space' : key}`];
  const digit = /^Digit(\d)$/.exec(press.code);
  if (shift && digit) chords.push(`${control}${alt}Shift+${digit[1]}`);
  return chords;
}

/** A chord as shown to the user. */
export const shownKeys = (keys: readonly string[]): string | undefined =>
  keys[0]?.replace('Delete', 'Del').replace('Escape', 'Esc');
