import { X } from 'lucide-react';
import type { ReactNode } from 'react';
import type { Part } from '../../shared-types/board.ts';
import { inspectorWords as words } from '../../shared-types/words/window/inspector.ts';
import { coverById } from '../editing/covers.ts';
import { useApp, useAppState, useDocument } from '../state/use-app.ts';
import { IconButton } from '../widgets/Buttons.tsx';
import { Section } from '../widgets/Section.tsx';
import { ArrangeStrip } from './ArrangeStrip.tsx';
import { CoverFields } from './CoverFields.tsx';
import { DrawnSection } from './DrawnSection.tsx';
import { ExposureSection } from './ExposureSection.tsx';
import { PartDataSection } from './PartDataSection.tsx';
import { PoseSection } from './PoseSection.tsx';
import { SiteFields } from './SiteFields.tsx';
import { TagFields } from './TagFields.tsx';
import { TagStrip } from './TagStrip.tsx';
import { WatchFields } from './WatchFields.tsx';
import './inspector.css';

/** What is selected, whatever the stage. It lies at the foot of the panel, so the stage above stays where it is. */
export function Inspector() {
  const { selection } = useAppState((state) => ({ selection: state.selection }));
  const { board, plan } = useDocument();
  const parts = selection.parts.size > 0 ? board.parts.filter((part) => selection.parts.has(part.refdes)) : [];
  if (parts.length > 0) return <PartInspector parts={parts} />;
  const site = plan.sites.find((one) => one.id === selection.siteId);
  if (site)
    return (
      <Shell title={site.target} said={words.site}>
        <Section title={words.site}>
          <SiteFields site={site} />
        </Section>
      </Shell>
    );
  const cover = coverById({ board, plan }, selection.coverId);
  if (cover)
    return (
      <Shell title={cover.id} said={words.side[cover.side]}>
        <CoverFields key={cover.id} cover={cover} />
      </Shell>
    );
  const watch = plan.tags.find((tag) => tag.id === selection.watchId);
  return watch?.kind === 'watchPoint' ? (
    <Shell title={watch.name} said={words.watch}>
      <WatchFields tag={watch} />
    </Shell>
  ) : null;
}

function PartInspector({ parts }: { parts: readonly Part[] }) {
  const [first] = parts;
  const boardOpen = useAppState((state) => state.view.stage === 'board');
  const one = parts.length === 1;
  const said = [first.value, first.package.name].filter(Boolean).join(', ');
  return (
    <Shell
      title={one ? first.refdes : words.many(parts.length)}
      said={one ? `${words.side[first.side]}${said && `, ${said}`}` : ''}
      strip={boardOpen ? <ArrangeStrip count={parts.length} /> : <TagStrip />}
    >
      {boardOpen && one && <DrawnSection part={first} />}
      {boardOpen && <PoseSection key={`place ${one ? first.refdes : 'many'}`} parts={parts} />}
      {one && !boardOpen && <ExposureSection refdes={first.refdes} />}
      {one && !boardOpen && <TagFields refdes={first.refdes} />}
      <PartDataSection key={one ? first.refdes : 'many'} parts={parts} open={boardOpen} />
    </Shell>
  );
}

type ShellProps = { title: string; said: string; strip?: ReactNode; children: ReactNode };

function Shell({ title, said, strip, children }: ShellProps) {
  const app = useApp();
  return (
    <section className="inspector" aria-label={words.title}>
      <header>
        <h2>
          {title}
          {said && <span className="soft">{said}</span>}
        </h2>
        <IconButton icon={X} small label={words.clear} keys="Esc" onPress={() => app.bench.clearSelection()} />
      </header>
      {strip}
      <div className="body scrolls">{children}</div>
    </section>
  );
}
