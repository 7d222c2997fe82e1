import type { Tag, TagOf } from '../../shared-types/tags.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { planWords as words } from '../../shared-types/words/window/plan.ts';
import { setTagFields, setTagNote } from '../editing/tags.ts';
import { useApp, useDocument, useTypedEdit } from '../state/use-app.ts';
import { Check } from '../widgets/Check.tsx';
import { Choice } from '../widgets/Choice.tsx';
import { TextEntry } from '../widgets/TextEntry.tsx';
import { ShieldFields } from './ShieldFields.tsx';
import { SiteFields } from './SiteFields.tsx';

/** The fields of a tag. */
export function TagDetail({ tag }: { tag: Tag }) {
  if (tag.kind === 'remove') return <RemoveFields tag={tag} />;
  if (tag.kind === 'shield') return <ShieldFields tag={tag} />;
  if (tag.kind === 'relocate') return <RelocateField tag={tag} />;
  if (tag.kind === 'reprogram') return <ReprogramField tag={tag} />;
  return tag.kind === 'replace' ? <ReplaceFields tag={tag} /> : null;
}

export function TagNote({ tag }: { tag: Tag }) {
  const typed = useTypedEdit(
    `${editLabels.note} ${tag.id}`,
    (note) => (document) => setTagNote(document, tag.id, note),
  );
  return <TextEntry label={words.note} bare value={tag.note} placeholder={words.addNote} longest={2000} {...typed} />;
}

function RemoveFields({ tag }: { tag: TagOf<'remove'> }) {
  const app = useApp();
  const slot = useTypedEdit(
    `${words.traySlot} ${tag.refdes}`,
    (traySlot) => (document) => setTagFields(document, tag.id, 'remove', { traySlot }),
  );
  return (
    <>
      <TextEntry label={words.traySlot} value={tag.traySlot} longest={20} mono {...slot} />
      <Check
        on={tag.goesBack}
        onChange={(goesBack) =>
          app.bench.apply(editLabels.tagFields, (document) => setTagFields(document, tag.id, 'remove', { goesBack }))
        }
      >
        {words.goesBack}
      </Check>
    </>
  );
}

function RelocateField({ tag }: { tag: TagOf<'relocate'> }) {
  const app = useApp();
  const { parts } = useDocument().board;
  const empty = parts.filter((part) => !part.fitted || part.refdes === tag.toRefdes);
  return (
    <Choice
      label={words.toRefdes}
      value={tag.toRefdes}
      placeholder={words.noPosition}
      items={empty.map((part) => ({ id: part.refdes, label: part.refdes, more: part.package.name }))}
      onChange={(toRefdes) =>
        app.bench.apply(editLabels.tagFields, (document) => setTagFields(document, tag.id, 'relocate', { toRefdes }))
      }
    />
  );
}

const ways = (['in-circuit', 'off-and-back'] as const).map((id) => ({ id, label: words.ways[id] }));

function ReprogramField({ tag }: { tag: TagOf<'reprogram'> }) {
  const app = useApp();
  return (
    <Choice
      label={words.way}
      value={tag.way}
      items={ways}
      onChange={(way) =>
        app.bench.apply(editLabels.tagFields, (document) => setTagFields(document, tag.id, 'reprogram', { way }))
      }
    />
  );
}

/** A replace tag stands for its site. */
function ReplaceFields({ tag }: { tag: TagOf<'replace'> }) {
  const site = useDocument().plan.sites.find((one) => one.id === tag.siteId);
  return site && <SiteFields site={site} />;
}
