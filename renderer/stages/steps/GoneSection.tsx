import { X } from 'lucide-react';
import type { StepMark } from '../../../shared-types/steps.ts';
import { goneWords } from '../../../shared-types/words/steps/step-words.ts';
import { stepEdits, stepStageWords as words } from '../../../shared-types/words/window/steps.ts';
import { forgetMark } from '../../editing/steps.ts';
import { useApp } from '../../state/use-app.ts';
import { IconButton } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';

/** What was ticked or noted and is no longer asked for: kept, and said. */
export function GoneSection({ gone }: { gone: readonly StepMark[] }) {
  const app = useApp();
  if (gone.length === 0) return null;
  return (
    <Section title={words.gone} count={gone.length}>
      <ul className="step-gone">
        {gone.map((mark) => (
          <li key={mark.stepId}>
            <span>
              {goneWords(mark)}
              {mark.note && `. ${mark.note}`}
            </span>
            <IconButton
              icon={X}
              small
              label={words.forget(mark.words)}
              onPress={() => app.bench.apply(stepEdits.forget, (document) => forgetMark(document, mark.stepId))}
            />
          </li>
        ))}
      </ul>
    </Section>
  );
}
