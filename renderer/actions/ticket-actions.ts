import { Command, FileDiff, Keyboard, LibraryBig, Printer, Settings2 } from 'lucide-react';
import { actionLabels as labels } from '../../shared-types/words/window/actions.ts';
import { chooseUpdateFiles } from '../stages/start/take-files.ts';
import type { App } from '../state/app.ts';
import type { DialogName } from '../state/app-state.ts';
import { FIND_BOX_ID, PROFILE_SEARCH_ID } from '../state/element-ids.ts';
import { saveSheet } from '../state/save-sheet.ts';
import { type Action, hasTicket } from './action.ts';

const dialog = (app: App, name: DialogName): void => app.store.set((state) => ({ ...state, dialog: name }));
const always = () => true;

export const ticketActions: readonly Action[] = [
  {
    id: 'find',
    group: 'view',
    label: labels.find,
    keys: ['Ctrl+F', '/'],
    enabled: hasTicket,
    run: () => document.getElementById(FIND_BOX_ID)?.focus(),
  },
  {
    id: 'shelf',
    group: 'ticket',
    label: labels.shelf,
    keys: ['Ctrl+O'],
    icon: LibraryBig,
    enabled: hasTicket,
    run: (app) => void app.tickets.close(),
  },
  {
    id: 'save',
    group: 'ticket',
    label: labels.save,
    keys: ['Ctrl+S'],
    enabled: hasTicket,
    run: (app) => void app.tickets.save(),
  },
  {
    id: 'update-board',
    group: 'ticket',
    label: labels.updateBoard,
    keys: [],
    icon: FileDiff,
    enabled: hasTicket,
    run: chooseUpdateFiles,
  },
  {
    id: 'print-map',
    group: 'ticket',
    label: labels.printMap,
    keys: ['Ctrl+P'],
    icon: Printer,
    enabled: hasTicket,
    run: (app) => void saveSheet(app, 'pdf'),
  },
  ...(['svg', 'png'] as const).map(
    (format): Action => ({
      id: `save-map-${format}`,
      group: 'ticket',
      label: labels.saveMapAs(format.toUpperCase()),
      keys: [],
      enabled: hasTicket,
      run: (app) => void saveSheet(app, format),
    }),
  ),
  {
    id: 'run-evaluation',
    group: 'ticket',
    label: labels.runEvaluation,
    keys: [],
    enabled: (state) =>
      hasTicket(state) && !state.evaluation.running && (state.ticket?.document.plan.heatRuns.length ?? 0) > 0,
    run: (app) => app.tickets.runEvaluation(),
  },
  {
    id: 'stop-evaluation',
    group: 'ticket',
    label: labels.stopEvaluation,
    keys: [],
    enabled: (state) => state.evaluation.running !== null,
    run: (app) => app.tickets.cancelEvaluation(),
  },
  {
    id: 'calibrate',
    group: 'ticket',
    label: labels.calibrate,
    keys: [],
    enabled: (state) => (state.ticket?.document.plan.heatRuns.length ?? 0) > 0,
    run: (app) => dialog(app, 'calibrate'),
  },
  {
    id: 'search-profile',
    group: 'ticket',
    label: labels.searchProfile,
    keys: [],
    enabled: (state) => (state.ticket?.document.plan.heatRuns.length ?? 0) > 0,
    run: showSearch,
  },
  {
    id: 'palette',
    group: 'ticket',
    label: labels.palette,
    keys: ['Ctrl+Shift+P'],
    icon: Command,
    enabled: always,
    run: (app) => dialog(app, 'palette'),
  },
  {
    id: 'help',
    group: 'ticket',
    label: labels.help,
    keys: ['?'],
    icon: Keyboard,
    enabled: always,
    run: (app) => dialog(app, 'help'),
  },
  {
    id: 'settings',
    group: 'ticket',
    label: labels.settings,
    keys: ['Ctrl+,'],
    icon: Settings2,
    enabled: always,
    run: (app) => dialog(app, 'settings'),
  },
];

/** The stage Heat at its search for a better profile, the focus on what opens it. */
function showSearch(app: App): void {
  app.setView({ stage: 'heat', panelOpen: true });
  // The stage is drawn by the next frame, and a palette gives the focus back as it closes.
  setTimeout(() => {
    const section = document.getElementById(PROFILE_SEARCH_ID);
    section?.scrollIntoView({ block: 'start' });
    section?.querySelector('button')?.focus();
  }, 120);
}
