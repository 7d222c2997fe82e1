import {
  Cable,
  Camera,
  CircuitBoard,
  Flame,
  Keyboard,
  ListChecks,
  type LucideIcon,
  Map as MapIcon,
  Settings2,
  Tags,
} from 'lucide-react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { openOfHealth } from '../../shared-types/rules/health/board-health.ts';
import { summarise } from '../../shared-types/rules/summary.ts';
import { actionLabels } from '../../shared-types/words/window/actions.ts';
import { stageNames, stageOpen, frameWords as words } from '../../shared-types/words/window/frame.ts';
import { openSuggestions } from '../actions/edit-actions.ts';
import { openOfPhoto } from '../stages/photo/open-of-photo.ts';
import { openOfWorkMap } from '../stages/work-map/open-of-work-map.ts';
import { type AppState, STAGES, type Stage } from '../state/app-state.ts';
import { healthOf } from '../state/health.ts';
import { openOfSteps } from '../state/step-plan.ts';
import { openOfStraps } from '../state/strap-plan.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { Icon, IconButton, WithTip } from '../widgets/Buttons.tsx';

const icons: Record<Stage, LucideIcon> = {
  board: CircuitBoard,
  photo: Camera,
  plan: Tags,
  heat: Flame,
  straps: Cable,
  steps: ListChecks,
  workMap: MapIcon,
};

/** The stages with what is still open in each. */
export function StageRail() {
  const app = useApp();
  const stage = useAppState((state) => state.view.stage);
  const open = useAppState(openCounts);
  return (
    <nav className="rail" aria-label={words.stages}>
      <ToggleButtonGroup
        className="stages"
        orientation="vertical"
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[stage]}
        aria-label={words.stages}
        onSelectionChange={([next]) => next && app.setView({ stage: next as Stage, panelOpen: true })}
      >
        {STAGES.map((name, index) => (
          <WithTip
            key={name}
            label={open[name] > 0 ? stageOpen[name](open[name]) : stageNames[name]}
            keys={`${index + 1}`}
          >
            <ToggleButton id={name} className="rail-item">
              <Icon of={icons[name]} size={20} />
              {stageNames[name]}
              {open[name] > 0 && <span className="open-count">{open[name] > 99 ? '99+' : open[name]}</span>}
            </ToggleButton>
          </WithTip>
        ))}
      </ToggleButtonGroup>
      <span className="space" />
      <div className="foot">
        <IconButton
          icon={Keyboard}
          label={actionLabels.help}
          keys="?"
          onPress={() => app.store.set((state) => ({ ...state, dialog: 'help' }))}
        />
        <IconButton
          icon={Settings2}
          label={actionLabels.settings}
          keys="Ctrl+,"
          onPress={() => app.store.set((state) => ({ ...state, dialog: 'settings' }))}
        />
      </div>
    </nav>
  );
}

/** What is open in each stage, as a number. */
function openCounts(state: AppState): Record<Stage, number> {
  const { ticket, evaluation } = state;
  if (!ticket) return { board: 0, photo: 0, plan: 0, heat: 0, straps: 0, steps: 0, workMap: 0 };
  const { assessment } = evaluation;
  const summary = assessment && summarise(assessment, ticket.document.plan);
  return {
    board: openOfHealth(healthOf(state)),
    photo: openOfPhoto(state),
    plan: openSuggestions(state).length,
    heat: summary ? summary.over + summary.unsure : 0,
    straps: openOfStraps(state),
    steps: openOfSteps(state),
    workMap: openOfWorkMap(state).length,
  };
}
