import type { RunResult, TargetResult } from '../../../shared-types/evaluation.ts';
import type { Problem } from '../../../shared-types/problem.ts';
import { bandWords } from '../../../shared-types/words/uncertainty.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { wordsOf } from '../../state/problem-words.ts';
import { showSite } from '../../state/show-part.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { type Units, useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';

/** Does the target melt, everywhere, without being cooked: a small table for each run. */
export function TargetSection() {
  const { heatRuns } = useDocument().plan;
  const { runs, problem } = useAppState((state) => ({
    runs: state.evaluation.assessment?.evaluation.runs,
    problem: state.evaluation.problem,
  }));
  const shownRunId = useAppState((state) => state.view.shownRunId);
  if (!runs)
    return (
      <Section title={words.targets}>
        {problem ? <Trouble problem={problem} /> : <p className="empty">{frameWords.waiting}.</p>}
      </Section>
    );
  const shown = runs.filter((run) => run.targets.length > 0 && (!shownRunId || run.runId === shownRunId));
  return (
    <Section title={words.targets}>
      {shown.map((run) => (
        <RunTargets key={run.runId} run={run} name={heatRuns.find((one) => one.id === run.runId)?.name ?? run.runId} />
      ))}
    </Section>
  );
}

/** Why there are no figures, and what to do about it. */
function Trouble({ problem }: { problem: Problem }) {
  const [title, text] = wordsOf(problem);
  return (
    <div role="alert">
      <p>{title}</p>
      <p className="soft">{text}</p>
    </div>
  );
}

function RunTargets({ run, name }: { run: RunResult; name: string }) {
  const { measures } = useUnits();
  const bases = new Set(run.targets.map((target) => basisOf(target, measures)));
  return (
    <table className="target-table">
      <caption>
        <b>{name}</b>
        {[...bases].map((basis) => (
          <span key={basis} className="soft">
            {basis}
          </span>
        ))}
      </caption>
      <thead>
        <tr>
          <th>{words.heads.part}</th>
          <th>{words.heads.coldest}</th>
          <th>{words.heads.hottest}</th>
          <th>{words.heads.skin}</th>
          <th>{words.heads.molten}</th>
        </tr>
      </thead>
      <tbody>
        {run.targets.map((target) => (
          <TargetRow key={target.siteId} target={target} />
        ))}
      </tbody>
    </table>
  );
}

/** Against what the figures stand: '225–230 wanted, liquidus 220, skin 255'. */
function basisOf({ windowC, liquidusC, skinLimitC }: TargetResult, m: Units['measures']): string {
  const wanted = windowC ? [words.window(m.degrees(windowC.from), m.degrees(windowC.to))] : [];
  return [...wanted, words.liquidus(m.degrees(liquidusC)), words.skinLimit(m.degrees(skinLimitC))].join(', ');
}

function TargetRow({ target }: { target: TargetResult }) {
  const app = useApp();
  const { measures: m } = useUnits();
  const { windowC: window } = target;
  const off = window && (target.coldestJointC < window.from || target.coldestJointC > window.to);
  const cooked = target.skinMaxC > target.skinLimitC;
  return (
    <tr>
      <th scope="row">
        <Button look="link" small onPress={() => showSite(app, target.siteId)}>
          <span className="mono">{target.refdes}</span>
        </Button>
        <span className={target.verdict === 'melts' ? 'soft' : 'loud'}>{words.verdicts[target.verdict]}</span>
      </th>
      <td className={off ? 'loud' : undefined}>
        {m.degrees(target.coldestJointC)}
        {target.bands && <span className="soft"> {bandWords.plusMinus(m.difference(target.bands.coldestK))}</span>}
      </td>
      <td>{m.degrees(target.hottestJointC)}</td>
      <td className={cooked ? 'loud' : undefined}>{m.degrees(target.skinMaxC)}</td>
      <td>{m.seconds(target.secondsAllAbove)}</td>
    </tr>
  );
}
