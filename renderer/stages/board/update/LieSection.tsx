import { boardUpdateWords, lieOf } from '../../../../shared-types/words/board-update.ts';
import { updateSheetWords as words } from '../../../../shared-types/words/window/board-update.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Choice } from '../../../widgets/Choice.tsx';
import { Section } from '../../../widgets/Section.tsx';
import { LengthEntry } from '../../../widgets/UnitEntry.tsx';
import type { BoardUpdate, ChosenLie } from './use-board-update.ts';

const lies = (['same', 'mirrored', 'over'] as const).map((id) => ({ id, label: words.lies[id] }));
const turns = words.turns.map((label, index) => ({ id: String(index), label }));

/** How the files' board lies on the drawing: found by vote, shown, to be changed. */
export function LieSection({ update: { changes, lie, setLie } }: { update: BoardUpdate }) {
  const { frame } = changes.alignment;
  const strange = boardUpdateWords.strange(changes);
  const turnAnew = (fields: Partial<ChosenLie>) => {
    const { mirror, over, quarters } = frame;
    setLie({ mirror, over, quarters, by: null, ...fields });
  };
  const move = (fields: { x?: number; y?: number }) =>
    setLie({ ...frame, by: { x: fields.x ?? frame.by.x, y: fields.y ?? frame.by.y } });
  return (
    <Section
      title={words.lie}
      action={
        lie && (
          <Button small onPress={() => setLie(null)}>
            {words.byVote}
          </Button>
        )
      }
    >
      <div className="lie-fields">
        <Choice
          label={words.lieLabel}
          value={lieOf(changes.alignment)}
          items={lies}
          onChange={(id) => turnAnew({ mirror: id !== 'same', over: id === 'over' })}
        />
        <Choice
          label={words.turn}
          value={String(frame.quarters)}
          items={turns}
          onChange={(id) => turnAnew({ quarters: Number(id) as ChosenLie['quarters'] })}
        />
        <LengthEntry label={words.moveX} value={frame.by.x} onChange={(x) => x !== null && move({ x })} />
        <LengthEntry label={words.moveY} value={frame.by.y} onChange={(y) => y !== null && move({ y })} />
      </div>
      <p className="soft reason">{boardUpdateWords.alignedBy(changes.alignment)}</p>
      {strange && (
        <p className="import-problem" role="alert">
          {strange}
        </p>
      )}
    </Section>
  );
}
