import { useState } from 'react';
import { findingWords } from '../../../shared-types/words/findings.ts';
import { phaseWords, stepFaultWords } from '../../../shared-types/words/steps/step-words.ts';
import { stepEdits, stepStageWords as words } from '../../../shared-types/words/window/steps.ts';
import { forgetMoves } from '../../editing/steps.ts';
import { minuteNow, stepPlanOf } from '../../state/step-plan.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Fold, Section } from '../../widgets/Section.tsx';
import { GoneSection } from './GoneSection.tsx';
import { OwnStepFold } from './OwnStepFold.tsx';
import { StepList } from './StepList.tsx';
import { WhoLine } from './WhoLine.tsx';
import '../stages.css';
import './steps.css';

/** The work in order: what stands in its way, then phase by phase what is done, read and checked. */
export function StepsStage() {
  const app = useApp();
  const document = useDocument();
  const assessment = useAppState((state) => state.evaluation.assessment);
  const [at, setAt] = useState('');
  const plan = stepPlanOf(document, assessment);
  const who = () => ({ by: document.plan.ticket.technician, at: at || minuteNow() });
  const first = plan.steps.find(({ done }) => !done)?.phase;
  if (plan.steps.length === 0)
    return (
      <>
        <p className="stage-lead">{words.none}</p>
        <GoneSection gone={plan.gone} />
      </>
    );
  return (
    <>
      <FirstOfAll />
      <WhoLine at={at} onAt={setAt} />
      <p className="stage-lead step-keys">{words.keys}</p>
      {!assessment && <p className="stage-lead">{words.noFigures}</p>}
      {plan.phases.map((phase) => {
        const steps = plan.steps.filter((step) => step.phase === phase.id);
        const done = steps.filter((step) => step.done).length;
        return (
          <Fold
            key={phase.id}
            title={phaseWords(phase)}
            summary={words.progress(done, steps.length)}
            open={phase.id === first}
          >
            <StepList plan={plan} steps={steps} who={who} />
          </Fold>
        );
      })}
      <GoneSection gone={plan.gone} />
      <OwnStepFold phases={plan.phases} />
      {document.plan.steps.moves.length > 0 && (
        <p className="stage-lead">
          <Button small look="link" onPress={() => app.bench.apply(stepEdits.movesBack, forgetMoves)}>
            {words.movesBack}
          </Button>
        </p>
      )}
    </>
  );
}

/** Of the steps that were ticked too early so many are named. */
const EARLY_SHOWN = 2;

/** What stops the work, and what was entered and does not agree. */
function FirstOfAll() {
  const { measures } = useUnits();
  const document = useDocument();
  const assessment = useAppState((state) => state.evaluation.assessment);
  const plan = stepPlanOf(document, assessment);
  const stops = (assessment?.findings ?? []).filter(({ weight }) => weight === 'stop');
  // What was entered at a step is told by the list itself, from the document as it is now.
  const ENTERED = ['tray-count-differs', 'read-outs-differ', 'strap-code-read-differs'];
  const others = stops.filter(({ code }) => !ENTERED.includes(code)).map((finding) => findingWords(finding, measures));
  const early = plan.faults.filter(({ code }) => code === 'done-before');
  const grave = plan.faults.filter(({ code }) => code !== 'done-before');
  if (others.length + plan.faults.length === 0) return null;
  return (
    <Section title={words.first} count={others.length + plan.faults.length}>
      <ul className="step-faults">
        {[...grave, ...early.slice(0, EARLY_SHOWN)].map((fault) => (
          <li key={JSON.stringify(fault)}>{stepFaultWords(fault, plan, measures)}</li>
        ))}
        {early.length > EARLY_SHOWN && <li>{words.moreEarly(early.length - EARLY_SHOWN)}</li>}
        {others.map(({ what, todo }) => (
          <li key={what}>
            {what}. {todo}
          </li>
        ))}
      </ul>
    </Section>
  );
}
