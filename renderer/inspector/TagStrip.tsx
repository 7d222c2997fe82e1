import { ToggleButton } from 'react-aria-components';
import type { TagKind } from '../../shared-types/tags.ts';
import { inspectorWords as words } from '../../shared-types/words/window/inspector.ts';
import { shownKeys } from '../actions/chords.ts';
import { actionById } from '../actions/table.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { WithTip } from '../widgets/Buttons.tsx';
import { TagGlyph } from '../widgets/TagGlyph.tsx';

const kinds: readonly TagKind[] = ['remove', 'shield', 'replace', 'relocate', 'reprogram', 'watchPoint'];

/** Every tag as its glyph; the tag's letter on the keyboard does the same. */
export function TagStrip() {
  return (
    <div className="tag-strip" role="toolbar" aria-label={words.tags}>
      {kinds.map((kind) => (
        <TagButton key={kind} kind={kind} />
      ))}
    </div>
  );
}

function TagButton({ kind }: { kind: TagKind }) {
  const app = useApp();
  const action = actionById(`tag-${kind}`);
  const on = useAppState((state) => action.on?.(state) ?? false);
  return (
    <WithTip label={action.label} keys={shownKeys(action.keys)}>
      <ToggleButton className="tag-button" aria-label={action.label} isSelected={on} onChange={() => action.run(app)}>
        <TagGlyph kind={kind} size={22} hollow={!on} />
      </ToggleButton>
    </WithTip>
  );
}
