import { LEAVE } from '../../../../shared-types/rules/board-update/match.ts';
import { boardUpdateWords } from '../../../../shared-types/words/board-update.ts';
import { updateSheetWords as words } from '../../../../shared-types/words/window/board-update.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Choice } from '../../../widgets/Choice.tsx';
import { Section } from '../../../widgets/Section.tsx';
import type { BoardUpdate } from './use-board-update.ts';

const LEFT = 'left as it is';

/** Designators that stand for several parts of the files: which of them is the drawing's is asked. */
export function AskedSection({ update: { changes, answers, answer, askAgain } }: { update: BoardUpdate }) {
  const { measures } = useUnits();
  const answered = Object.entries(answers).filter(([, name]) => name !== LEAVE);
  if (changes.questions.length + answered.length === 0) return null;
  return (
    <Section title={words.asked} count={changes.questions.length}>
      <p className="soft reason">{words.askedText}</p>
      <ul className="change-lines">
        {changes.questions.map(({ part: { refdes }, candidates }) => (
          <li key={refdes} className="gone-line">
            <span className="said">{boardUpdateWords.question(refdes, candidates.length)}</span>
            <Choice
              bare
              label={words.fate(refdes)}
              value={LEFT}
              items={[
                { id: LEFT, label: words.leave },
                ...candidates.map((one) => ({
                  id: one.refdes,
                  label: words.candidate(one.refdes, measures.length(one.x), measures.length(one.y), one.side),
                })),
              ]}
              onChange={(next) => answer(refdes, next === LEFT ? LEAVE : next)}
            />
          </li>
        ))}
        {answered.map(([refdes, name]) => (
          <li key={refdes} className="gone-line">
            <span className="name">{words.renamedTo(refdes, name)}</span>
            <Button small onPress={() => askAgain(refdes)}>
              {words.askAgain}
            </Button>
          </li>
        ))}
      </ul>
    </Section>
  );
}
