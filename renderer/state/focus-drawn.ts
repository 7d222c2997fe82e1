import { flushSync } from 'react-dom';

/**
 * Changes the state, has it drawn at once, and gives what is then there the focus: keys that follow quickly already reach it.
 * Where it is not there yet, the next frame tries again.
 */
export function focusDrawn(change: () => void, find: () => HTMLElement | null): void {
  flushSync(change);
  const focus = (found: HTMLElement): void => {
    found.focus();
    if (found instanceof HTMLInputElement) found.select();
  };
  const found = find();
  if (found) focus(found);
  else
    requestAnimationFrame(() => {
      const later = find();
      if (later) focus(later);
    });
}
