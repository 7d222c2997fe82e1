import { type KeyboardEvent, useState } from 'react';
import { Button as BareButton } from 'react-aria-components';
import type { Step, StepPlan } from '../../../shared-types/rules/steps/types.ts';
import { stepWords } from '../../../shared-types/words/steps/step-words.ts';
import { stepStageWords as words } from '../../../shared-types/words/window/steps.ts';
import type { Who } from '../../editing/steps.ts';
import { showStep } from '../../state/show-step.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Check } from '../../widgets/Check.tsx';
import { StepDetail } from './StepDetail.tsx';
import { shift, tick } from './step-verbs.ts';

type ListProps = { plan: StepPlan; steps: readonly Step[]; who: () => Who };

/** Focus on the step above or below, across the folds that are open. */
function focusStep(from: HTMLElement, by: 1 | -1): void {
  const all = [...(from.closest('.stage')?.querySelectorAll<HTMLElement>('.step-act') ?? [])];
  all[all.indexOf(from) + by]?.focus();
}

export function StepList({ plan, steps, who }: ListProps) {
  const app = useApp();
  const [open, setOpen] = useState<string | null>(null);
  const onKey = (event: KeyboardEvent, step: Step) => {
    const act = event.target as HTMLElement;
    if (!act.classList.contains('step-act') || event.ctrlKey || event.metaKey) return;
    const by = ({ ArrowDown: 1, ArrowUp: -1 } as const)[event.key as 'ArrowDown' | 'ArrowUp'];
    if (by && event.altKey) shift(app, plan, step.id, by > 0 ? 'later' : 'earlier');
    else if (by) focusStep(act, by);
    else if (event.key === 'x') tick(app, step, !step.done, who);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <ol className="steps">
      {steps.map((step) => (
        // The row itself is no control: it hears the keys of the button in it.
        <li key={step.id} data-done={step.done ? '' : undefined} onKeyDown={(event) => onKey(event, step)}>
          <StepRow
            step={step}
            place={plan.steps.indexOf(step) + 1}
            open={open === step.id}
            who={who}
            onOpen={() => {
              setOpen(open === step.id ? null : step.id);
              showStep(app, step);
            }}
          />
          {open === step.id && <StepDetail step={step} plan={plan} />}
        </li>
      ))}
    </ol>
  );
}

type RowProps = { step: Step; place: number; open: boolean; who: () => Who; onOpen: () => void };

function StepRow({ step, place, open, who, onOpen }: RowProps) {
  const app = useApp();
  const { measures } = useUnits();
  const { act } = stepWords(step, measures);
  const selected = useAppState((state) => step.parts.length === 1 && state.selection.parts.has(step.parts[0]));
  return (
    <div className="step-row" data-selected={selected ? '' : undefined}>
      <Check on={step.done} onChange={(on) => tick(app, step, on, who)}>
        <span className="visually-hidden">{words.tick(act)}</span>
      </Check>
      <BareButton className="step-act" aria-expanded={open} onPress={onOpen}>
        <span className="place figure">{place}</span>
        <span>
          {step.alert && <b>{`${words.alert[step.alert]}: `}</b>}
          {act}
          {step.moved && <span className="soft"> ({words.moved})</span>}
        </span>
      </BareButton>
    </div>
  );
}
