import type { RunResult, TargetResult } from '../../../shared-types/evaluation.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { useAppState, useDocument } from '../../state/use-app.ts';
import { type Units, useUnits } from '../../state/use-units.ts';
import { Section } from '../../widgets/Section.tsx';

/** Does the target melt, everywhere, without being cooked: one entry for each run and target. */
export function TargetSection() {
  const { heatRuns } = useDocument().plan;
  const runs = useAppState((state) => state.evaluation.assessment?.evaluation.runs);
  const shownRunId = useAppState((state) => state.view.shownRunId);
  if (!runs) return <Section title={words.targets}>{<p className="empty">{frameWords.waiting}</p>}</Section>;
  const shown = runs.filter((run) => run.targets.length > 0 && (!shownRunId || run.runId === shownRunId));
  return (
    <Section title={words.targets}>
      {shown.flatMap((run) =>
        run.targets.map((target) => (
          <Target
            key={`${run.runId} ${target.siteId}`}
            target={target}
            run={run}
            name={heatRuns.find((one) => one.id === run.runId)?.name ?? run.runId}
          />
        )),
      )}
    </Section>
  );
}

function Target({ target, name }: { target: TargetResult; run: RunResult; name: string }) {
  const { measures } = useUnits();
  const rows = figuresOf(target, measures);
  return (
    <div className="target-result">
      <h4>
        <span className="mono">{target.refdes}</span>
        <span className="soft">{name}</span>
        <span className="verdict" data-verdict={target.verdict}>
          {words.verdicts[target.verdict]}
        </span>
      </h4>
      <dl className="target-figures">
        {rows.map(([label, figure, against]) => (
          <div key={label} style={{ display: 'contents' }}>
            <dt>{label}</dt>
            <dd className="figure">{figure}</dd>
            <dd className="against">{against}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

function figuresOf(target: TargetResult, m: Units['measures']): [string, string, string][] {
  const window = target.windowC;
  return [
    [
      words.coldest,
      m.temperature(target.coldestJointC),
      window ? words.window(m.degrees(window.from), m.degrees(window.to)) : words.liquidus(m.degrees(target.liquidusC)),
    ],
    [words.hottest, m.temperature(target.hottestJointC), words.liquidus(m.degrees(target.liquidusC))],
    [words.skin, m.temperature(target.skinMaxC), words.limit(m.degrees(target.skinLimitC))],
    [words.above, m.seconds(target.secondsAllAbove), ''],
  ];
}
