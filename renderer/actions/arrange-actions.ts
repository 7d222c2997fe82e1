import {
  AlignCenterHorizontal,
  AlignCenterVertical,
  AlignEndHorizontal,
  AlignEndVertical,
  AlignHorizontalSpaceBetween,
  AlignStartHorizontal,
  AlignStartVertical,
  AlignVerticalSpaceBetween,
  CircleDotDashed,
  Copy,
  FlipHorizontal2,
  Grid3x3,
  Layers2,
  RotateCcwSquare,
  RotateCwSquare,
} from 'lucide-react';
import { otherSide } from '../../shared-types/geometry.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import { actionLabels as labels } from '../../shared-types/words/window/actions.ts';
import { partEditWords as words } from '../../shared-types/words/window/parts.ts';
import { addParts, copiesOf } from '../editing/add-parts.ts';
import { alignParts, distributeParts } from '../editing/arrange.ts';
import { boundToSide, flipParts, partsOf, turnOverParts, turnParts } from '../editing/move-parts.ts';
import { type SeenWay, seenAxis } from '../editing/seen-axis.ts';
import type { App } from '../state/app.ts';
import type { AppState } from '../state/app-state.ts';
import { type Action, hasParts } from './action.ts';

const onBoard = (state: AppState): boolean => state.view.stage === 'board';
const placing = (state: AppState): boolean => onBoard(state) && state.view.tool === 'place';
const several = (least: number) => (state: AppState) =>
  onBoard(state) && hasParts(state) && state.selection.parts.size >= least;

type Edit = (document: TicketDocument, refdes: readonly string[]) => TicketDocument;
type Label = (refdes: readonly string[]) => string;

function onSelection(app: App, label: Label, edit: Edit): void {
  const refdes = [...app.store.get().selection.parts];
  app.bench.apply(label(refdes), (document) => edit(document, refdes));
}

const arranging = (
  id: string,
  label: string,
  keys: string[],
  icon: Action['icon'],
  more: Pick<Action, 'run'> & Partial<Action>,
): Action => ({
  id,
  group: 'board',
  label,
  keys,
  icon,
  enabled: several(1),
  ...more,
});

/** Turning by the eye: on the bottom, seen from below, left is clockwise on the board. */
function turning(id: string, label: string, keys: string[], degrees: number, icon?: Action['icon']): Action {
  return arranging(id, label, keys, icon, {
    enabled: (state) => placing(state) || several(1)(state),
    run(app) {
      const { view } = app.store.get();
      const seen = view.side === 'bottom' ? -degrees : degrees;
      if (view.tool === 'place') app.bench.setPlacing({ turn: (view.placing.turn + seen + 360) % 360 });
      else onSelection(app, words.turn, (document, refdes) => turnParts(document, refdes, seen));
    },
  });
}

function aligning(id: string, label: string, keys: string[], icon: Action['icon'], way: SeenWay): Action {
  return arranging(id, label, keys, icon, {
    enabled: several(2),
    run(app) {
      const { axis, edge } = seenAxis(way, app.bench.model());
      onSelection(app, words.align, (document, refdes) => alignParts(document, refdes, axis, edge));
    },
  });
}

function spacing(id: string, label: string, icon: Action['icon'], way: 'left' | 'up'): Action {
  return arranging(id, label, [], icon, {
    enabled: several(3),
    run(app) {
      const { axis } = seenAxis(way, app.bench.model());
      onSelection(app, words.distribute, (document, refdes) => distributeParts(document, refdes, axis));
    },
  });
}

/** Moving selected parts about by command, in the stage Board. */
export const arrangeActions: readonly Action[] = [
  turning('part-left', labels.partLeft, [','], 90, RotateCcwSquare),
  turning('part-right', labels.partRight, ['.'], -90, RotateCwSquare),
  turning('part-left-fine', labels.partLeftFine, ['Alt+,'], 15),
  turning('part-right-fine', labels.partRightFine, ['Alt+.'], -15),
  arranging('flip-parts', labels.flipParts, ['F'], Layers2, {
    enabled: (state) => placing(state) || several(1)(state),
    run: (app) => flip(app, flipParts, words.flip),
  }),
  arranging('turn-over-parts', labels.turnOverParts, ['Shift+F'], FlipHorizontal2, {
    run: (app) => flip(app, turnOverParts, words.turnOver),
  }),
  arranging('duplicate', labels.duplicate, ['Ctrl+D'], Copy, { run: (app) => duplicate(app, false) }),
  arranging('duplicate-over', labels.duplicateOver, ['Ctrl+Shift+D'], undefined, {
    run: (app) => duplicate(app, true),
  }),
  aligning('align-left', labels.alignLeft, ['Ctrl+ArrowLeft'], AlignStartVertical, 'left'),
  aligning('align-upright', labels.alignUpright, [], AlignCenterVertical, 'upright'),
  aligning('align-right', labels.alignRight, ['Ctrl+ArrowRight'], AlignEndVertical, 'right'),
  aligning('align-up', labels.alignUp, ['Ctrl+ArrowUp'], AlignStartHorizontal, 'up'),
  aligning('align-level', labels.alignLevel, [], AlignCenterHorizontal, 'level'),
  aligning('align-down', labels.alignDown, ['Ctrl+ArrowDown'], AlignEndHorizontal, 'down'),
  spacing('space-across', labels.spaceAcross, AlignHorizontalSpaceBetween, 'left'),
  spacing('space-down', labels.spaceDown, AlignVerticalSpaceBetween, 'up'),
  arranging('ring', labels.ring, ['Shift+R'], CircleDotDashed, {
    enabled: (state) => several(1)(state) && state.selection.parts.size === 1,
    run: (app) => app.store.set((state) => ({ ...state, dialog: 'ring' })),
  }),
  arranging('array', labels.array, ['Shift+G'], Grid3x3, {
    run: (app) => app.store.set((state) => ({ ...state, dialog: 'array' })),
  }),
];

/** While placing, the board turns over and the next part goes there; else the selected parts change their side. */
function flip(app: App, edit: Edit, label: Label): void {
  const { view, selection, ticket } = app.store.get();
  if (placing(app.store.get())) {
    app.setView({ side: otherSide(view.side) });
    return;
  }
  const bound = ticket ? boundToSide(ticket.document, [...selection.parts]) : [];
  if (bound.length > 0) app.bench.hint(words.boundToSide(bound));
  else onSelection(app, label, edit);
}

/** How far beside the originals copies lie, mm. */
const BESIDE_MM = 1;

function duplicate(app: App, over: boolean): void {
  const { ticket, selection } = app.store.get();
  if (!ticket) return;
  const names = [...selection.parts];
  const widest = Math.max(...partsOf(ticket.document, names).map((part) => part.package.lengthMm));
  const by = over ? { x: 0, y: 0 } : { x: 0, y: -Math.max(BESIDE_MM, Math.round(widest * 10) / 10) };
  const { parts, refdes } = copiesOf(ticket.document, names, [{ by, otherSide: over }]);
  app.bench.apply(words.copy(names), (document) => addParts(document, parts));
  app.bench.select(
    refdes.map((one) => ({ kind: 'part', refdes: one })),
    'replace',
  );
}
