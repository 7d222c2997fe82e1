import { ChevronRight } from 'lucide-react';
import type { ReactNode } from 'react';
import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import { Icon } from './Buttons.tsx';
import './section.css';

type SectionProps = { title: string; count?: number; action?: ReactNode; children: ReactNode };

/** A titled part of a panel between hairlines. */
export function Section({ title, count, action, children }: SectionProps) {
  return (
    <section className="section" aria-label={title}>
      <header>
        <h3>
          {title}
          {count !== undefined && <span className="count">{count}</span>}
        </h3>
        {action}
      </header>
      {children}
    </section>
  );
}

type FoldProps = { id?: string; title: string; summary?: string; open?: boolean; children: ReactNode };

/** A section that folds away; folded it says in a few words what is in it. */
export function Fold({ id, title, summary, open, children }: FoldProps) {
  return (
    <Disclosure className="section fold" defaultExpanded={open}>
      <Heading id={id} level={3}>
        <Button slot="trigger" className="fold-button">
          <span className="arrow">
            <Icon of={ChevronRight} size={16} />
          </span>
          {title}
          {summary && <span className="summary">{summary}</span>}
        </Button>
      </Heading>
      <DisclosurePanel className="fold-panel">{children}</DisclosurePanel>
    </Disclosure>
  );
}
