import { actionGroups } from '../../shared-types/words/window/actions.ts';
import { helpWords as words } from '../../shared-types/words/window/frame.ts';
import { outlineKeys } from '../../shared-types/words/window/outline.ts';
import { placeKeys } from '../../shared-types/words/window/parts.ts';
import type { Action } from '../actions/action.ts';
import { ACTIONS } from '../actions/table.ts';
import { useAppState } from '../state/use-app.ts';
import { Dialogue } from '../widgets/Dialogue.tsx';
import './dialogs.css';

type Group = Action['group'];

/** Every key, out of the action table. */
export function KeySheet({ onClose }: { onClose: () => void }) {
  const wheelDoes = useAppState((state) => state.settings.wheelDoes);
  const keyed = ACTIONS.filter((action) => action.keys.length > 0);
  return (
    <Dialogue title={words.title} size="widest" onClose={onClose}>
      <div className="key-sheet">
        {(Object.keys(actionGroups) as Group[]).map((group) => (
          <section key={group}>
            <h3>{actionGroups[group]}</h3>
            <dl>
              {keyed
                .filter((action) => action.group === group)
                .map((action) => (
                  <Line key={action.id} what={action.label} how={action.keys.join(', ')} />
                ))}
            </dl>
          </section>
        ))}
        {[placeKeys, outlineKeys].map(({ title, lines }) => (
          <section key={title}>
            <h3>{title}</h3>
            <dl>
              {lines.map(([what, how]) => (
                <Line key={how} what={what} how={how} />
              ))}
            </dl>
          </section>
        ))}
        <section>
          <h3>{words.mouseTitle}</h3>
          <dl className="pointer">
            {[...words.wheel[wheelDoes], ...words.mouse].map(([how, what]) => (
              <Line key={how} what={how} how={what} />
            ))}
          </dl>
        </section>
      </div>
    </Dialogue>
  );
}

function Line({ what, how }: { what: string; how: string }) {
  return (
    <>
      <dt>{what}</dt>
      <dd>{how}</dd>
    </>
  );
}
