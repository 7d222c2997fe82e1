import { ArrayDialog } from '../stages/board/parts/ArrayDialog.tsx';
import { RingDialog } from '../stages/board/parts/RingDialog.tsx';
import { TallDialog } from '../stages/board/parts/TallDialog.tsx';
import { UpdateDialog } from '../stages/board/update/UpdateDialog.tsx';
import { CalibrateDialog } from '../stages/heat/calibration/CalibrateDialog.tsx';
import { ImportDialog } from '../stages/start/ImportDialog.tsx';
import { DrawBoardDialog, NewTicketDialog } from '../stages/start/NewTicketDialog.tsx';
import { NotesDialog } from '../stages/start/NotesDialog.tsx';
import type { DialogName } from '../state/app-state.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { KeySheet } from './KeySheet.tsx';
import { Palette } from './Palette.tsx';
import { SettingsSheet } from './SettingsSheet.tsx';

const dialogs: Record<DialogName, (props: { onClose: () => void }) => React.ReactNode> = {
  tall: TallDialog,
  ring: RingDialog,
  array: ArrayDialog,
  new: NewTicketDialog,
  draw: DrawBoardDialog,
  import: ImportDialog,
  update: UpdateDialog,
  notes: NotesDialog,
  palette: Palette,
  help: KeySheet,
  settings: SettingsSheet,
  calibrate: CalibrateDialog,
};

/** The one sheet that may lie over the window. */
export function Dialogs() {
  const app = useApp();
  const name = useAppState((state) => state.dialog);
  if (!name) return null;
  const Shown = dialogs[name];
  return (
    <Shown onClose={() => app.store.set((state) => (state.dialog === name ? { ...state, dialog: null } : state))} />
  );
}
