import { useState } from 'react';
import type { Finding } from '../../../shared-types/evaluation.ts';
import { findingWords } from '../../../shared-types/words/findings.ts';
import { planWords as words } from '../../../shared-types/words/window/plan.ts';
import { useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';

const SHOWN_AT_FIRST = 5;
const rank = { stop: 0, warn: 1, note: 2 };

/** What stops the work: before everything else, and all of it. */
export function StopSection() {
  const findings = useAppState((state) => state.evaluation.assessment?.findings);
  const stops = findings?.filter((finding) => finding.weight === 'stop') ?? [];
  if (stops.length === 0) return null;
  return (
    <Section title={words.stops} count={stops.length}>
      <FindingList findings={stops} />
    </Section>
  );
}

/** What else planning found, the gravest first. */
export function FindingSection() {
  const findings = useAppState((state) => state.evaluation.assessment?.findings);
  const [all, setAll] = useState(false);
  const others = findings?.filter((finding) => finding.weight !== 'stop') ?? [];
  if (others.length === 0) return null;
  const sorted = others.toSorted((a, b) => rank[a.weight] - rank[b.weight]);
  const shown = all ? sorted : sorted.slice(0, SHOWN_AT_FIRST);
  return (
    <Section title={words.findings} count={others.length}>
      <FindingList findings={shown} />
      {shown.length < sorted.length && (
        <Button look="link" small onPress={() => setAll(true)}>
          {words.moreOf(sorted.length - shown.length)}
        </Button>
      )}
    </Section>
  );
}

function FindingList({ findings }: { findings: readonly Finding[] }) {
  return (
    <ul>
      {findings.map((finding) => (
        <FindingRow key={JSON.stringify(finding)} finding={finding} />
      ))}
    </ul>
  );
}

function FindingRow({ finding }: { finding: Finding }) {
  const { measures } = useUnits();
  const { what, todo } = findingWords(finding, measures);
  return (
    <li className="finding" data-weight={finding.weight}>
      <span className="weight">{words.weights[finding.weight]}</span>
      <div>
        {what}. {todo}
        {finding.source && <span className="source">{finding.source.text}</span>}
      </div>
    </li>
  );
}
