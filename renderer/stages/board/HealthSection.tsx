import { useState } from 'react';
import { Button as BareButton } from 'react-aria-components';
import { type HealthGroup, healthGroups } from '../../../shared-types/rules/health/board-health.ts';
import type { HealthEntry, HealthKind } from '../../../shared-types/rules/health/types.ts';
import {
  healthCount,
  healthReason,
  healthSentence,
  healthSummary,
  healthWords as words,
} from '../../../shared-types/words/board-health.ts';
import type { App } from '../../state/app.ts';
import { healthOf } from '../../state/health.ts';
import { showParts, showSite } from '../../state/show-part.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';
import { HealthFix } from './HealthFix.tsx';
import './health.css';

/** Kinds that come by the hundred on imported boards: their parts are listed on demand only. */
const BY_THE_HUNDRED: ReadonlySet<HealthKind> = new Set(['class-guessed', 'height-missing']);
const SHOWN_AT_FIRST = 3;
const SHOWN_AT_MOST = 200;

/** What is odd about the board: exceptions first, each with a way to it and, where obvious, a fix. */
export function HealthSection() {
  const groups = healthGroups(useAppState(healthOf));
  return (
    <Section title={words.title}>
      <p className="health-summary">{healthSummary(groups)}</p>
      {groups.map((group) => (
        <Group key={group.kind} group={group} />
      ))}
    </Section>
  );
}

function Group({ group: { kind, entries } }: { group: HealthGroup }) {
  const [all, setAll] = useState(false);
  const first = BY_THE_HUNDRED.has(kind) ? 0 : SHOWN_AT_FIRST;
  const named = entries.filter((entry) => entry.refdes.length > 0);
  const shown = named.slice(0, all ? SHOWN_AT_MOST : first);
  const left = named.length - shown.length;
  return (
    <div className="health-group">
      <h4>{healthCount(kind, entries.length)}</h4>
      <p className="why">{healthReason[kind]}</p>
      {shown.length > 0 && (
        <ul>
          {shown.map((entry) => (
            <Row key={`${entry.refdes.join()} ${entry.siteId} ${entry.tagId}`} entry={entry} />
          ))}
        </ul>
      )}
      <div className="ends">
        {left > 0 && !all && (
          <Button look="quiet" small onPress={() => setAll(true)}>
            {first > 0 ? words.showAll(left) : words.list}
          </Button>
        )}
        <HealthFix kind={kind} entries={entries} />
      </div>
    </div>
  );
}

function Row({ entry }: { entry: HealthEntry }) {
  const app = useApp();
  const { measures } = useUnits();
  const [name] = entry.refdes;
  const sentence = healthSentence(entry, measures);
  return (
    <li>
      <BareButton
        className="health-row"
        aria-label={words.show(`${name} ${sentence}`)}
        onPress={() => show(app, entry)}
      >
        <span className="mono">{name}</span>
        <span className="rest">{sentence}</span>
      </BareButton>
    </li>
  );
}

function show(app: App, { kind, refdes, siteId }: HealthEntry): void {
  if (kind === 'tag-lost') app.setView({ stage: 'plan' });
  else if (siteId !== undefined) showSite(app, siteId);
  else showParts(app, kind === 'lies-over' ? refdes.slice(0, 1) : refdes);
}
