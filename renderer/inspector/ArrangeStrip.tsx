import { arrangeWords as words } from '../../shared-types/words/window/parts.ts';
import { actionById } from '../actions/table.ts';
import { useAppState } from '../state/use-app.ts';
import { ActionButton } from '../widgets/ActionButton.tsx';
import './arrange.css';

const single = ['part-left', 'part-right', 'flip-parts', 'turn-over-parts', 'duplicate', 'array'];
const alone = ['ring'];
const several = ['align-left', 'align-upright', 'align-right', 'align-up', 'align-level', 'align-down'];
const spaced = ['space-across', 'space-down'];

/** Moving the selected parts about by command: in the stage Board it stands where the tags stand elsewhere. */
export function ArrangeStrip({ count }: { count: number }) {
  const turnable = useAppState(actionById('part-left').enabled);
  if (!turnable) return null;
  const ids = [...single, ...(count === 1 ? alone : several), ...(count > 2 ? spaced : [])];
  return (
    <div className="arrange-strip" role="toolbar" aria-label={words.title}>
      {ids.map((id) => (
        <ActionButton key={id} id={id} small />
      ))}
    </div>
  );
}
