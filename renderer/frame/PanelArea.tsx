import { PanelRightClose, PanelRightOpen } from 'lucide-react';
import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { stageNames, frameWords as words } from '../../shared-types/words/window/frame.ts';
import { Inspector } from '../inspector/Inspector.tsx';
import { BoardStage } from '../stages/board/BoardStage.tsx';
import { HeatStage } from '../stages/heat/HeatStage.tsx';
import { PhotoStage } from '../stages/photo/PhotoStage.tsx';
import { PlanStage } from '../stages/plan/PlanStage.tsx';
import { StepsStage } from '../stages/steps/StepsStage.tsx';
import { StrapsStage } from '../stages/straps/StrapsStage.tsx';
import { WorkMapStage } from '../stages/work-map/WorkMapStage.tsx';
import type { Stage } from '../state/app-state.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { IconButton } from '../widgets/Buttons.tsx';

const stages: Record<Stage, () => React.ReactNode> = {
  board: BoardStage,
  photo: PhotoStage,
  plan: PlanStage,
  heat: HeatStage,
  straps: StrapsStage,
  steps: StepsStage,
  workMap: WorkMapStage,
};

/** Width before anybody dragged it: wider where the screen is. */
const startingWidth = () => (window.innerWidth >= 1800 ? 420 : 352);
const LEAST = 300;
const MOST = 720;

export function PanelArea() {
  const app = useApp();
  const { stage, open } = useAppState((state) => ({ stage: state.view.stage, open: state.view.panelOpen }));
  const kept = useAppState((state) => state.settings.panelWidthPx);
  const [dragged, setDragged] = useState<number | null>(null);
  const width = Math.max(LEAST, Math.min(MOST, dragged ?? kept ?? startingWidth()));
  if (!open)
    return (
      <div className="panel-area panel-closed">
        <IconButton
          icon={PanelRightOpen}
          label={words.showPanel}
          keys="B"
          small
          onPress={() => app.setView({ panelOpen: true })}
        />
      </div>
    );
  const Shown = stages[stage];
  return (
    <div className="panel-area">
      <Grip width={width} onDrag={setDragged} onDone={(next) => app.changeSettings({ panelWidthPx: next })} />
      <aside className="panel" style={{ width }} aria-label={words.panel}>
        <div className="panel-head">
          <h2>{stageNames[stage]}</h2>
          <IconButton
            icon={PanelRightClose}
            label={words.hidePanel}
            keys="B"
            small
            onPress={() => app.setView({ panelOpen: false })}
          />
        </div>
        <div className="stage scrolls">
          <Shown />
        </div>
        {/* Steps are worked through with the board in view: the list keeps the whole panel. */}
        {stage !== 'steps' && <Inspector />}
      </aside>
    </div>
  );
}

type GripProps = { width: number; onDrag: (width: number | null) => void; onDone: (width: number) => void };

/** The edge that is dragged to size the panel; the arrow keys do the same. */
function Grip({ width, onDrag, onDone }: GripProps) {
  const start = useRef<{ x: number; width: number } | null>(null);
  const clamp = (value: number) => Math.round(Math.max(LEAST, Math.min(MOST, value)));
  const move = (event: PointerEvent) => {
    if (start.current) onDrag(clamp(start.current.width + start.current.x - event.clientX));
  };
  const end = () => {
    if (!start.current) return;
    start.current = null;
    onDone(clamp(width));
    onDrag(null);
  };
  const byKey = (event: KeyboardEvent) => {
    const step = { ArrowLeft: 16, ArrowRight: -16 }[event.key];
    if (!step) return;
    event.preventDefault();
    onDone(clamp(width + step));
  };
  return (
    // A rule cannot be dragged; the separator role with a value is what a window splitter is.
    // biome-ignore lint/a11y/useSemanticElements: see above
    <div
      className="panel-grip"
      role="separator"
      aria-orientation="vertical"
      aria-label={words.panelWidth}
      aria-valuenow={width}
      aria-valuemin={LEAST}
      aria-valuemax={MOST}
      tabIndex={0}
      data-dragging={start.current ? '' : undefined}
      onPointerDown={(event) => {
        start.current = { x: event.clientX, width };
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={move}
      onPointerUp={end}
      onPointerCancel={end}
      onKeyDown={byKey}
    />
  );
}
