import { X } from 'lucide-react';
import { Button as BareButton } from 'react-aria-components';
import { alloyById } from '../../../shared-types/library/alloys.ts';
import type { Site, TicketDocument } from '../../../shared-types/plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { planWords as words } from '../../../shared-types/words/window/plan.ts';
import { removeSite } from '../../editing/sites.ts';
import { showSite } from '../../state/show-part.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { IconButton } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';
import { TagGlyph } from '../../widgets/TagGlyph.tsx';

/** Where parts are exchanged: one line each; the fields of the selected one lie open. */
export function SiteSection() {
  const document = useDocument();
  const { sites } = document.plan;
  return (
    <Section title={words.sites} count={sites.length > 0 ? sites.length : undefined}>
      {sites.length === 0 && <p className="empty">{words.noSites}</p>}
      <ul className="rows">
        {sites.map((site) => (
          <SiteRow key={site.id} site={site} document={document} />
        ))}
      </ul>
    </Section>
  );
}

function SiteRow({ site, document }: { site: Site; document: TicketDocument }) {
  const app = useApp();
  const { measures } = useUnits();
  const selected = useAppState(({ selection }) => selection.siteId === site.id || selection.parts.has(site.target));
  return (
    <li className="row" data-selected={selected ? '' : undefined}>
      <TagGlyph kind="replace" />
      <BareButton className="who" aria-label={words.showSite(site.name)} onPress={() => showSite(app, site.id)}>
        <span className="name">{site.target}</span>{' '}
        <span className="figure soft">
          {measures.length(site.area.lengthMm)} × {measures.length(site.area.widthMm)}
        </span>
        <span className="why">{siteSummary(site, document)}</span>
      </BareButton>
      <span className="ends">
        <IconButton
          icon={X}
          small
          label={words.removeSite(site.name)}
          onPress={() => app.bench.apply(editLabels.removeSite, (before) => removeSite(before, site.id))}
        />
      </span>
    </li>
  );
}

const alloyName = (id: string): string => alloyById(id)?.name ?? words.alloyUnknown.toLowerCase();

/** 'SAC305 off, SAC305 on; HG-1 for HG-2'. */
function siteSummary(site: Site, { plan }: TicketDocument): string {
  const tag = plan.tags.find((one) => one.kind === 'replace' && one.siteId === site.id);
  const parts = tag?.kind === 'replace' ? [tag.comesOff, tag.goesOn].filter(Boolean).join(' → ') : '';
  const alloys = words.siteAlloys(alloyName(site.alloyOff), alloyName(site.alloyOn));
  return parts ? `${parts}; ${alloys}` : alloys;
}
