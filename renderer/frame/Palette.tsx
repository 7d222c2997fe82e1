import { Search } from 'lucide-react';
import {
  Autocomplete,
  Dialog,
  Input,
  Menu,
  MenuItem,
  Modal,
  ModalOverlay,
  TextField,
  useFilter,
} from 'react-aria-components';
import { actionGroups } from '../../shared-types/words/window/actions.ts';
import { helpWords as words } from '../../shared-types/words/window/frame.ts';
import { shownKeys } from '../actions/chords.ts';
import { ACTIONS, actionById } from '../actions/table.ts';
import { useApp } from '../state/use-app.ts';
import { Icon } from '../widgets/Buttons.tsx';
import '../widgets/overlays.css';
import './dialogs.css';

/** Every action that may run now, found by typing. */
export function Palette({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const { contains } = useFilter({ sensitivity: 'base' });
  const state = app.store.get();
  const usable = ACTIONS.filter((action) => action.id !== 'palette' && action.enabled(state));
  return (
    <ModalOverlay className="scrim" isOpen isDismissable onOpenChange={(open) => !open && onClose()}>
      <Modal className="modal">
        <Dialog className="palette" aria-label={words.palette}>
          <Autocomplete filter={contains}>
            <TextField aria-label={words.paletteHint} autoFocus className="entry">
              <Icon of={Search} />
              <Input placeholder={words.paletteHint} />
            </TextField>
            <Menu
              className="options scrolls"
              aria-label={words.palette}
              items={usable}
              renderEmptyState={() => <p className="options-heading">{words.nothing}</p>}
              onAction={(key) => {
                onClose();
                actionById(String(key)).run(app);
              }}
            >
              {(action) => (
                <MenuItem
                  id={action.id}
                  textValue={`${action.label} ${actionGroups[action.group]}`}
                  className="menu-item"
                >
                  <span>{action.label}</span>
                  <span className="soft">{actionGroups[action.group]}</span>
                  <kbd>{shownKeys(action.keys)}</kbd>
                </MenuItem>
              )}
            </Menu>
          </Autocomplete>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
