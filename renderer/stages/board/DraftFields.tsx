import { outlineWords as words } from '../../../shared-types/words/window/outline.ts';
import { useApp } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { type Advance, advance, closeShape, takeBack } from '../../tools/outline/advance.ts';
import { fieldsOf, fieldValue } from '../../tools/outline/draft.ts';
import { begun, emptyDraft, type OutlineState } from '../../tools/outline/outline-state.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Check } from '../../widgets/Check.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';

/** The shape under way as a form: the same figures as beside the pencil, for keyboard and touch. */
export function DraftFields({ outline }: { outline: OutlineState }) {
  const app = useApp();
  const { lengthSign } = useUnits();
  const { draft, mode } = outline;
  const run = (step: typeof advance) => {
    const { document, outline: now } = app.bench.model();
    const done: Advance = step(now, document.board, lengthSign);
    app.bench.setOutline(done.fields);
    if (done.apply) app.bench.apply(done.apply.label, done.apply.edit);
  };
  const set = (fields: Partial<OutlineState>) => app.bench.setOutline(fields);
  return (
    <>
      {fieldsOf(outline).map((field) => (
        <NumberEntry
          key={field}
          label={words.fields[field]}
          unit={words.fieldUnit(field, lengthSign)}
          decimals={lengthSign === 'mil' ? 1 : 3}
          emptyIs="-"
          value={fieldValue(outline, field, lengthSign)}
          onChange={(value) => {
            const { [field]: _, ...rest } = app.bench.model().outline.draft.typed;
            set({
              draft: {
                ...app.bench.model().outline.draft,
                typed: value === null ? rest : { ...rest, [field]: String(value) },
              },
            });
          }}
        />
      ))}
      {mode === 'polygon' && (
        <Check on={draft.arc} onChange={(arc) => set({ draft: { ...draft, arc, arcEnd: null } })}>
          {words.arc}
        </Check>
      )}
      <div className="button-row">
        <Button small onPress={() => run(advance)}>
          {words.set}
        </Button>
        {mode === 'polygon' && (
          <Button small disabled={draft.points.length < 2} onPress={() => run(closeShape)}>
            {words.close}
          </Button>
        )}
        <Button small disabled={draft.points.length === 0} onPress={() => set(takeBack(outline))}>
          {words.back}
        </Button>
        <Button small disabled={!begun(draft)} onPress={() => set({ draft: emptyDraft, refused: null })}>
          {words.drop}
        </Button>
      </div>
      <p className="empty">
        {words.hints.draw} {mode === 'polygon' && words.hints.polygon}
      </p>
    </>
  );
}
