import { ChevronDown, ChevronUp, X } from 'lucide-react';
import { parseClock } from '../../../shared-types/rules/clock-time.ts';
import type { Expected, Step, StepPlan } from '../../../shared-types/rules/steps/types.ts';
import { CAUTIONS } from '../../../shared-types/words/cautions.ts';
import {
  predictedWords,
  readingName,
  readingUnit,
  sourceWords,
  stepWords,
  tickedWords,
} from '../../../shared-types/words/steps/step-words.ts';
import { WAIT_WORDS } from '../../../shared-types/words/steps/waits.ts';
import { stepEdits, stepStageWords as words } from '../../../shared-types/words/window/steps.ts';
import { clock } from '../../../shared-types/words/work-map.ts';
import { removeOwnStep, setOwnWords, setReading, setStepNote, setTicked } from '../../editing/steps.ts';
import { useApp, useTypedEdit } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { IconButton } from '../../widgets/Buttons.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { TemperatureEntry } from '../../widgets/UnitEntry.tsx';
import { shift } from './step-verbs.ts';

/** An opened step: why, what is read beside what is predicted, cautions, source, note, and where it may go. */
export function StepDetail({ step, plan }: { step: Step; plan: StepPlan }) {
  const { measures } = useUnits();
  const { why } = stepWords(step, measures);
  const reasons = [
    ...new Set(plan.waits.filter((wait) => wait.step === step.id).map(({ reason }) => WAIT_WORDS[reason])),
  ];
  return (
    <div className="step-detail">
      {why && <p>{why}</p>}
      {step.expects.map((expected) => (
        <ReadingEntry key={expected.key} step={step} expected={expected} />
      ))}
      {step.cautions.map((id) => (
        <p key={id} className="step-caution">
          <b>{CAUTIONS[id].title}.</b> {CAUTIONS[id].sentence}
        </p>
      ))}
      {reasons.length > 0 && (
        <p className="soft">
          {words.why}: {reasons.join('; ')}.
        </p>
      )}
      <p className="soft">{sourceWords(step)}</p>
      <NoteEntry step={step} />
      {step.done && step.mark && <TickedEntry step={step} />}
      <StepTools step={step} plan={plan} />
    </div>
  );
}

function ReadingEntry({ step, expected }: { step: Step; expected: Expected }) {
  const app = useApp();
  const { measures } = useUnits();
  const { key, unit } = expected;
  const read = step.mark?.readings.find((reading) => reading.key === key)?.value ?? null;
  const put = (value: number | string | null) =>
    app.bench.apply(stepEdits.reading, (document) => setReading(document, step, key, value));
  const predicted = predictedWords(expected, measures);
  const name = readingName(expected);
  const number = typeof read === 'number' ? read : null;
  return (
    <div className="step-reading">
      <span>{name}</span>
      <span className="soft">{predicted && words.predicted(predicted)}</span>
      {unit === 's' ? (
        <ClockEntry name={name} value={number} onDone={put} />
      ) : unit === 'text' ? (
        <TextEntry bare mono label={name} value={read === null ? '' : String(read)} longest={200} onDone={put} />
      ) : unit === 'C' ? (
        <TemperatureEntry bare label={name} value={number} emptyIs="" onChange={put} />
      ) : (
        <NumberEntry
          bare
          label={name}
          value={number}
          unit={readingUnit(unit)}
          decimals={unit === 'count' ? 0 : 3}
          least={0}
          emptyIs=""
          onChange={put}
        />
      )}
    </div>
  );
}

type ClockProps = { name: string; value: number | null; onDone: (value: number | null) => void };

/** A time of the run as minutes and seconds; what is none leaves the field as it was. */
function ClockEntry({ name, value, onDone }: ClockProps) {
  const take = (text: string) => {
    const seconds = parseClock(text);
    if (text.trim() === '') onDone(null);
    else if (seconds !== null) onDone(seconds);
  };
  return (
    <TextEntry
      bare
      mono
      label={name}
      value={value === null ? '' : clock(value)}
      placeholder={words.clock}
      longest={12}
      onDone={take}
    />
  );
}

function NoteEntry({ step }: { step: Step }) {
  const typed = useTypedEdit(stepEdits.note, (value) => (document) => setStepNote(document, step, value));
  return (
    <TextEntry
      bare
      label={words.note}
      value={step.mark?.note ?? ''}
      placeholder={words.addNote}
      longest={2000}
      {...typed}
    />
  );
}

/** Who ticked it and when: corrected here. */
function TickedEntry({ step }: { step: Step }) {
  const by = useTypedEdit(stepEdits.who, (value) => (document) => setTicked(document, step, { by: value }));
  const at = useTypedEdit(stepEdits.who, (value) => (document) => setTicked(document, step, { at: value }));
  return (
    <div className="step-who" title={step.mark ? tickedWords(step.mark) : undefined}>
      <TextEntry label={words.tickedBy} value={step.mark?.by ?? ''} longest={200} {...by} />
      <TextEntry label={words.tickedAt} value={step.mark?.at ?? ''} longest={40} {...at} />
    </div>
  );
}

function StepTools({ step, plan }: { step: Step; plan: StepPlan }) {
  const app = useApp();
  return (
    <div className="step-tools">
      <IconButton icon={ChevronUp} small label={words.earlier} onPress={() => shift(app, plan, step.id, 'earlier')} />
      <IconButton icon={ChevronDown} small label={words.later} onPress={() => shift(app, plan, step.id, 'later')} />
      {step.own !== null && (
        <>
          <OwnWords step={step} />
          <IconButton
            icon={X}
            small
            label={words.removeOwn}
            onPress={() => app.bench.apply(stepEdits.removeOwn, (document) => removeOwnStep(document, step.id))}
          />
        </>
      )}
    </div>
  );
}

function OwnWords({ step }: { step: Step }) {
  const typed = useTypedEdit(stepEdits.ownWords, (value) => (document) => setOwnWords(document, step.id, value));
  return <TextEntry bare needed label={words.addWords} value={step.own ?? ''} longest={2000} {...typed} />;
}
