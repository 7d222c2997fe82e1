import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import type { ViewState } from '../../state/app-state.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { Check } from '../../widgets/Check.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { Section } from '../../widgets/Section.tsx';

type Layer = keyof ViewState['layers'];
const layers: readonly Layer[] = ['heat', 'isotherms', 'rings', 'labels'];
const WORST = 'worst';

/** Which heat run the map shows, and what is drawn of it. */
export function ShownSection() {
  const app = useApp();
  const { heatRuns } = useDocument().plan;
  const { shownRunId, on } = useAppState((state) => ({ shownRunId: state.view.shownRunId, on: state.view.layers }));
  const shown = heatRuns.some((run) => run.id === shownRunId) ? shownRunId : null;
  const items = [{ id: WORST, label: words.worst }, ...heatRuns.map((run) => ({ id: run.id, label: run.name }))];
  return (
    <Section title={words.shown}>
      <Choice
        label={words.run}
        value={shown ?? WORST}
        items={items}
        onChange={(id) => app.setView({ shownRunId: id === WORST ? null : id })}
      />
      <div className="shown-toggles">
        {layers.map((layer) => (
          <Check key={layer} on={on[layer]} onChange={(next) => app.setView({ layers: { ...on, [layer]: next } })}>
            {words.layers[layer]}
          </Check>
        ))}
      </div>
    </Section>
  );
}
