import { X } from 'lucide-react';
import { Button as BareButton } from 'react-aria-components';
import type { TagOf } from '../../../shared-types/tags.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { planWords as words } from '../../../shared-types/words/window/plan.ts';
import { removeTagsById } from '../../editing/tags.ts';
import { watchPointsOf } from '../../editing/watch-points.ts';
import { showWatch } from '../../state/show-part.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { IconButton } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';
import { TagGlyph } from '../../widgets/TagGlyph.tsx';

/** Thermocouples of the plan. */
export function WatchSection() {
  const points = watchPointsOf(useDocument());
  if (points.length === 0) return null;
  return (
    <Section title={words.watch} count={points.length}>
      <ul className="rows">
        {points.map((tag) => (
          <WatchRow key={tag.id} tag={tag} />
        ))}
      </ul>
    </Section>
  );
}

function WatchRow({ tag }: { tag: TagOf<'watchPoint'> }) {
  const app = useApp();
  const selected = useAppState((state) => state.selection.watchId === tag.id);
  const side = frameWords[tag.side].toLowerCase();
  return (
    <li className="row" data-selected={selected ? '' : undefined}>
      <TagGlyph kind="watchPoint" />
      <BareButton className="who" onPress={() => showWatch(app, tag.id)}>
        <span className="name">{tag.name}</span>{' '}
        <span className="soft">{tag.refdes ? words.watchOn(tag.refdes) : words.watchBoard(side)}</span>
      </BareButton>
      <span className="ends">
        <IconButton
          icon={X}
          small
          label={words.removeWatch(tag.name)}
          onPress={() => app.bench.apply(editLabels.removeWatch, (document) => removeTagsById(document, [tag.id]))}
        />
      </span>
      {tag.note && <p className="extra note">{tag.note}</p>}
    </li>
  );
}
