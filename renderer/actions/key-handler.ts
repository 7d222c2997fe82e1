import { actionHints } from '../../shared-types/words/window/actions.ts';
import type { App } from '../state/app.ts';
import { actionForPress } from './table.ts';

const SINGLE_KEY_PLACES = '[role="listbox"], [role="menu"], [role="dialog"], [role="combobox"]';

/** Runs the action of a key. Typing in a field, and keys that a widget took, stay with them. */
export function listenToKeys(app: App, page: Window = window): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.isComposing) return;
    const action = actionForPress(event);
    if (!action || isTyping(event)) return;
    if (!action.enabled(app.store.get())) {
      if (event.ctrlKey || event.metaKey) event.preventDefault();
      if (action.group === 'tag') app.bench.hint(actionHints.selectFirst);
      return;
    }
    event.preventDefault();
    action.run(app);
  };
  page.addEventListener('keydown', onKey);
  return () => page.removeEventListener('keydown', onKey);
}

/** True when the key belongs to a field, list, menu or dialogue; chords with Ctrl go through, but for a field's own. */
function isTyping(event: KeyboardEvent): boolean {
  const target = event.target as HTMLElement | null;
  const inField = target?.matches?.(
    'input:not([type="checkbox"], [type="radio"], [type="range"]), textarea, [contenteditable="true"]',
  );
  const control = event.ctrlKey || event.metaKey;
  if (inField) return !control || /^[azyxcv]$/i.test(event.key);
  if (target?.closest?.('[role="dialog"]')) return true;
  if (!control && target?.closest?.(SINGLE_KEY_PLACES)) return true;
  const onButton = target?.closest?.('button, a, [role="checkbox"], [role="switch"], [role="radio"]');
  return Boolean(onButton) && (event.key === 'Enter' || event.key === ' ');
}
