import { ChevronDown, ChevronUp, X } from 'lucide-react';
import { Button as BareButton } from 'react-aria-components';
import type { TicketDocument } from '../../../shared-types/plan.ts';
import type { Tag } from '../../../shared-types/tags.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { planWords as words } from '../../../shared-types/words/window/plan.ts';
import { tagsInOrder } from '../../editing/order.ts';
import { moveTag, removeTagsById } from '../../editing/tags.ts';
import { showPart } from '../../state/show-part.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { IconButton } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';
import { TagGlyph } from '../../widgets/TagGlyph.tsx';
import { tagSummary } from './tag-summary.ts';

/** The tags in the order of work. */
export function WorkSection() {
  const document = useDocument();
  const ordered = tagsInOrder(document.plan.tags);
  return (
    <Section title={words.work} action={<OffAndBack document={document} />}>
      {ordered.length === 0 && <p className="empty">{words.noTags}</p>}
      <ol className="rows">
        {ordered.map((tag, index) => (
          <WorkRow key={tag.id} tag={tag} place={index + 1} last={ordered.length} />
        ))}
      </ol>
    </Section>
  );
}

function OffAndBack({ document }: { document: TicketDocument }) {
  const removals = document.plan.tags.flatMap((tag) => (tag.kind === 'remove' ? [tag] : []));
  if (removals.length === 0) return null;
  return (
    <span className="soft">{words.offAndBack(removals.length, removals.filter((tag) => tag.goesBack).length)}</span>
  );
}

function WorkRow({ tag, place, last }: { tag: Tag; place: number; last: number }) {
  const app = useApp();
  const refdes = tag.refdes ?? '';
  const selected = useAppState((state) => state.selection.parts.has(refdes));
  const move = (to: number) => app.bench.apply(editLabels.moveTag, (document) => moveTag(document, tag.id, to));
  return (
    <li className="row work-row" data-selected={selected ? '' : undefined}>
      <TagGlyph kind={tag.kind} />
      <BareButton className="who" onPress={() => showPart(app, refdes)}>
        <span className="place figure">{place}</span>
        <span className="name">{refdes}</span>
        <span className="said">{tagSummary(tag)}</span>
      </BareButton>
      <span className="ends">
        <span className="tools">
          {place > 1 && (
            <IconButton icon={ChevronUp} small label={words.moveUp(refdes)} onPress={() => move(place - 1)} />
          )}
          {place < last && (
            <IconButton icon={ChevronDown} small label={words.moveDown(refdes)} onPress={() => move(place + 1)} />
          )}
          <IconButton
            icon={X}
            small
            label={words.removeTag(refdes)}
            onPress={() => app.bench.apply(editLabels.removeTag, (document) => removeTagsById(document, [tag.id]))}
          />
        </span>
      </span>
      {tag.note && <p className="extra note">{tag.note}</p>}
    </li>
  );
}
