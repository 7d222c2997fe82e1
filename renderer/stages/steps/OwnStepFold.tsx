import { useState } from 'react';
import type { Phase } from '../../../shared-types/rules/steps/types.ts';
import { phaseWords } from '../../../shared-types/words/steps/step-words.ts';
import { stepEdits, stepStageWords as words } from '../../../shared-types/words/window/steps.ts';
import { addOwnStep } from '../../editing/steps.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { Fold } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';

/** A step that the rules do not know: a sentence, a phase, and the parts that are selected. */
export function OwnStepFold({ phases }: { phases: readonly Phase[] }) {
  const app = useApp();
  const selected = useAppState((state) => state.selection.parts);
  const [phase, setPhase] = useState(phases[0].id);
  const [text, setText] = useState('');
  const known = phases.some(({ id }) => id === phase) ? phase : phases[0].id;
  const add = () => {
    app.bench.apply(stepEdits.own, (document) => addOwnStep(document, known, text.trim(), [...selected].slice(0, 200)));
    setText('');
  };
  return (
    <Fold title={words.add} summary={selected.size > 0 ? words.ofSelection(selected.size) : undefined}>
      <Choice
        label={words.addPhase}
        value={known}
        items={phases.map((one) => ({ id: one.id, label: phaseWords(one) }))}
        onChange={setPhase}
      />
      <TextEntry
        stacked
        label={words.addWords}
        value={text}
        longest={2000}
        lines={2}
        onType={setText}
        onDone={setText}
      />
      <Button small disabled={text.trim() === ''} onPress={add}>
        {words.addButton}
      </Button>
    </Fold>
  );
}
