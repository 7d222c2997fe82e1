import { X } from 'lucide-react';
import { Button as BareButton } from 'react-aria-components';
import { ALLOYS } from '../../../shared-types/library/alloys.ts';
import type { Site } from '../../../shared-types/plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { planWords as words } from '../../../shared-types/words/window/plan.ts';
import { fitSelection } from '../../actions/view-actions.ts';
import { removeSite, setSiteFields } from '../../editing/sites.ts';
import { setTagFields } from '../../editing/tags.ts';
import { useApp, useAppState, useDocument, useTypedEdit } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { IconButton } from '../../widgets/Buttons.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { Section } from '../../widgets/Section.tsx';
import { TagGlyph } from '../../widgets/TagGlyph.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';

const alloys = [
  { id: 'unknown', label: words.alloyUnknown },
  ...ALLOYS.map((alloy) => ({ id: alloy.id, label: alloy.name, more: `${alloy.solidusC}–${alloy.liquidusC} °C` })),
];

export function SiteSection() {
  const { sites } = useDocument().plan;
  return (
    <Section title={words.sites} count={sites.length > 0 ? sites.length : undefined}>
      {sites.length === 0 && <p className="empty">{words.noSites}</p>}
      {sites.map((site) => (
        <SiteCard key={site.id} site={site} />
      ))}
    </Section>
  );
}

function SiteCard({ site }: { site: Site }) {
  const app = useApp();
  const { measures } = useUnits();
  const selected = useAppState((state) => state.selection.siteId === site.id);
  const set = (fields: Parameters<typeof setSiteFields>[2]) =>
    app.bench.apply(editLabels.siteFields, (document) => setSiteFields(document, site.id, fields));
  const show = () => {
    app.setView({ side: site.side });
    app.bench.select([{ kind: 'site', siteId: site.id }], 'replace');
    fitSelection(app);
  };
  return (
    <div className="site-card" data-selected={selected ? '' : undefined}>
      <header>
        <BareButton className="who" aria-label={words.showSite(site.name)} onPress={show}>
          <TagGlyph kind="replace" />
          <span className="name mono">{site.target}</span>
          <span className="soft figure">
            {measures.length(site.area.lengthMm)} × {measures.length(site.area.widthMm)}
          </span>
        </BareButton>
        <IconButton
          icon={X}
          small
          label={words.removeSite(site.name)}
          onPress={() => app.bench.apply(editLabels.removeSite, (document) => removeSite(document, site.id))}
        />
      </header>
      <Choice label={words.alloyOff} value={site.alloyOff} items={alloys} onChange={(alloyOff) => set({ alloyOff })} />
      <Choice label={words.alloyOn} value={site.alloyOn} items={alloys} onChange={(alloyOn) => set({ alloyOn })} />
      <ExchangeFields site={site} />
    </div>
  );
}

/** What comes off and what goes on: they stand in the site's replace tag. */
function ExchangeFields({ site }: { site: Site }) {
  const tag = useDocument().plan.tags.find((one) => one.kind === 'replace' && one.siteId === site.id);
  const id = tag?.id ?? '';
  const off = useTypedEdit(
    `${words.comesOff} ${site.target}`,
    (comesOff) => (document) => setTagFields(document, id, 'replace', { comesOff }),
  );
  const on = useTypedEdit(
    `${words.goesOn} ${site.target}`,
    (goesOn) => (document) => setTagFields(document, id, 'replace', { goesOn }),
  );
  if (tag?.kind !== 'replace') return null;
  return (
    <>
      <TextEntry label={words.comesOff} value={tag.comesOff} longest={500} {...off} />
      <TextEntry label={words.goesOn} value={tag.goesOn} longest={500} {...on} />
    </>
  );
}
