import { shownKeys } from '../actions/chords.ts';
import { actionById } from '../actions/table.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { IconButton } from './Buttons.tsx';

/** An icon button for an entry of the action table. */
export function ActionButton({ id, label, small }: { id: string; label?: string; small?: boolean }) {
  const app = useApp();
  const action = actionById(id);
  const enabled = useAppState(action.enabled);
  if (!action.icon) throw new Error(`Action ${id} has no icon`);
  return (
    <IconButton
      icon={action.icon}
      label={label || action.label}
      keys={shownKeys(action.keys)}
      small={small}
      disabled={!enabled}
      onPress={() => action.run(app)}
    />
  );
}
