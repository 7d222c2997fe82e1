import { Button as BareButton } from 'react-aria-components';
import { boardWords as words } from '../../../../shared-types/words/window/board.ts';
import { coverWords } from '../../../../shared-types/words/window/parts.ts';
import { actionById } from '../../../actions/table.ts';
import { useApp, useAppState, useDocument } from '../../../state/use-app.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Choice } from '../../../widgets/Choice.tsx';
import { Section } from '../../../widgets/Section.tsx';

const kinds = (['can', 'frame', 'stiffener'] as const).map((id) => ({ id, label: words.coverKinds[id] }));

/** Cans, frames and stiffeners: draw one, or pick one of the list to edit it. */
export function CoverSection() {
  const app = useApp();
  const { covers } = useDocument().board;
  const { measures } = useUnits();
  const kind = useAppState((state) => state.view.placing.coverKind);
  return (
    <Section title={words.covers} count={covers.length || undefined}>
      <div className="cover-draw">
        <Choice
          bare
          label={coverWords.kind}
          value={kind}
          items={kinds}
          onChange={(coverKind) => app.bench.setPlacing({ coverKind })}
        />
        <Button small onPress={() => actionById('tool-cover').run(app)}>
          {coverWords.draw}
        </Button>
      </div>
      <ul className="class-groups">
        {covers.map((cover) => (
          <li key={cover.id}>
            <BareButton
              className="pick"
              onPress={() => {
                app.setView({ side: cover.side });
                app.bench.select([{ kind: 'cover', id: cover.id }], 'replace');
              }}
            >
              <span className="mono">{cover.id}</span>
              <span>
                {words.coverKinds[cover.kind].toLowerCase()}, {words.fixings[cover.fixing]}
              </span>
            </BareButton>
            <span className="number">
              {measures.length(cover.lengthMm)} × {measures.length(cover.widthMm)}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
}
