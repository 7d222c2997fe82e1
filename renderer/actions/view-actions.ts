import {
  FlipVertical2,
  Hand,
  Maximize,
  MousePointer2,
  Play,
  RotateCcw,
  RotateCw,
  Scan,
  SquareDashed,
  Thermometer,
} from 'lucide-react';
import { bodyOf } from '../../shared-types/board.ts';
import { boxOf, otherSide, rectangleCorners } from '../../shared-types/geometry.ts';
import { actionLabels as labels } from '../../shared-types/words/window/actions.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { setClampedTurn } from '../editing/ticket-data.ts';
import type { App } from '../state/app.ts';
import type { AppState, Stage, ViewState } from '../state/app-state.ts';
import type { ToolName } from '../state/canvas-model.ts';
import { playableRevision, seek, togglePlaying } from '../state/playback.ts';
import { type Action, hasTicket } from './action.ts';
import { outlineToolAction } from './outline-actions.ts';

const view = (id: string, label: string, keys: string[], run: Action['run'], icon?: Action['icon']): Action => ({
  id,
  group: 'view',
  label,
  keys,
  icon,
  enabled: hasTicket,
  run,
});

const layer = (name: keyof ViewState['layers'], label: string, key: string): Action => ({
  ...view(`layer-${name}`, label, [key], (app) => {
    const { layers } = app.store.get().view;
    app.setView({ layers: { ...layers, [name]: !layers[name] } });
  }),
  on: (state) => state.view.layers[name],
  // In the stage Photo the heat map is off: see `canvas-model-of.ts`.
  enabled: (state) => hasTicket(state) && !(state.view.stage === 'photo' && (name === 'heat' || name === 'isotherms')),
});

const tool = (name: ToolName, label: string, keys: string[], icon: Action['icon']): Action => ({
  id: `tool-${name}`,
  group: 'tool',
  label,
  keys,
  icon,
  on: (state) => state.view.tool === name,
  enabled: hasTicket,
  run: (app) => app.setView({ tool: name }),
});

const stage = (name: Stage, label: string, key: string): Action => ({
  id: `stage-${name}`,
  group: 'stage',
  label,
  keys: [key],
  on: (state) => state.view.stage === name,
  enabled: hasTicket,
  run: (app) => app.setView({ stage: name, panelOpen: true }),
});

const canPlay = (state: AppState): boolean => state.view.stage === 'heat' && playableRevision(state) !== null;

export const viewActions: readonly Action[] = [
  { ...view('play', labels.play, ['Y'], (app) => togglePlaying(app.store), Play), enabled: canPlay },
  {
    ...view('play-rest', labels.playRest, [], (app) => seek(app.store, null)),
    enabled: (state) => state.view.playS !== null,
  },
  view(
    'turn-over',
    labels.turnOver,
    ['O'],
    (app) => app.setView({ side: otherSide(app.store.get().view.side) }),
    FlipVertical2,
  ),
  view('turn-left', labels.turnLeft, ['['], (app) => turnView(app, 90), RotateCcw),
  view('turn-right', labels.turnRight, [']'], (app) => turnView(app, -90), RotateCw),
  view('fit-all', labels.fitAll, ['Shift+1'], (app) => app.canvas.current?.fit(null), Maximize),
  {
    ...view('fit-selection', labels.fitSelection, ['Shift+2'], fitSelection, Scan),
    enabled: (state) => selectedBox(state) !== null,
  },
  view('zoom-in', labels.zoomIn, ['+', '='], (app) => app.canvas.current?.zoomBy(1.25)),
  view('zoom-out', labels.zoomOut, ['-'], (app) => app.canvas.current?.zoomBy(0.8)),
  layer('heat', labels.toggleHeat, 'M'),
  layer('isotherms', labels.toggleIsotherms, 'I'),
  layer('rings', labels.toggleRings, 'D'),
  layer('labels', labels.toggleLabels, 'N'),
  {
    ...view('tray', labels.toggleTray, ['T'], (app) =>
      app.changeSettings({ trayOpen: !app.store.get().settings.trayOpen }),
    ),
    on: (state) => state.settings.trayOpen,
  },
  {
    ...view('panel', labels.togglePanel, ['B'], (app) => app.setView({ panelOpen: !app.store.get().view.panelOpen })),
    on: (state) => state.view.panelOpen,
  },
];

export const toolActions: readonly Action[] = [
  tool('select', labels.toolSelect, ['V'], MousePointer2),
  tool('hand', labels.toolHand, ['H'], Hand),
  outlineToolAction,
  tool('site', labels.toolSite, [], SquareDashed),
  tool('watch', labels.toolWatch, [], Thermometer),
];

export const stageActions: readonly Action[] = [
  stage('board', labels.stageBoard, '1'),
  stage('photo', labels.stagePhoto, '2'),
  stage('plan', labels.stagePlan, '3'),
  stage('heat', labels.stageHeat, '4'),
  stage('straps', labels.stageStraps, '5'),
  stage('steps', labels.stageSteps, '6'),
  stage('workMap', labels.stageWorkMap, '7'),
];

function turnView(app: App, degrees: number): void {
  app.bench.apply(editLabels.turnView, (document) => setClampedTurn(document, document.plan.clampedTurnDeg + degrees));
}

/** The box around everything selected, mm; null: nothing is. */
export function selectedBox({ ticket, selection }: AppState) {
  if (!ticket) return null;
  const { board, plan } = ticket.document;
  const parts = board.parts.filter((part) => selection.parts.has(part.refdes)).map(bodyOf);
  const sites = plan.sites.filter((site) => site.id === selection.siteId).map((site) => site.area);
  const points = plan.tags.flatMap((tag) => (tag.kind === 'watchPoint' && tag.id === selection.watchId ? [tag] : []));
  const corners = [...[...parts, ...sites].flatMap(rectangleCorners), ...points.map(({ x, y }) => ({ x, y }))];
  return corners.length > 0 ? boxOf(corners) : null;
}

const AROUND_MM = 6;

/** Fits the selection with a little of what lies around it. */
function fitSelection(app: App): void {
  const box = selectedBox(app.store.get());
  if (!box) return;
  app.canvas.current?.fit({
    minX: box.minX - AROUND_MM,
    minY: box.minY - AROUND_MM,
    maxX: box.maxX + AROUND_MM,
    maxY: box.maxY + AROUND_MM,
  });
}
