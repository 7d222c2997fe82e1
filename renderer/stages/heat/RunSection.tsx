import { Ellipsis, Plus } from 'lucide-react';
import { useState } from 'react';
import {
  Button as BareButton,
  Menu,
  MenuItem,
  MenuTrigger,
  Popover,
  ToggleButton,
  ToggleButtonGroup,
} from 'react-aria-components';
import type { HeatRun } from '../../../shared-types/plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { addRun, duplicateRun, moveRun, removeRun, setRunFields, setRunSite } from '../../editing/heat-runs.ts';
import { useApp, useAppState, useDocument, useTypedEdit } from '../../state/use-app.ts';
import { Icon } from '../../widgets/Buttons.tsx';
import { Check } from '../../widgets/Check.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { Section } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { ProfileChart } from './ProfileChart.tsx';
import { SegmentTable } from './SegmentTable.tsx';

const kinds = (Object.keys(words.runKinds) as HeatRun['kind'][]).map((id) => ({ id, label: words.runKinds[id] }));

/** The heat runs: one at a time with its profile. */
export function RunSection() {
  const { heatRuns } = useDocument().plan;
  const shownRunId = useAppState((state) => state.view.shownRunId);
  const [chosen, setChosen] = useState<string | null>(null);
  const open = heatRuns.find((run) => run.id === (chosen ?? shownRunId)) ?? heatRuns[0];
  if (!open) return null;
  return (
    <Section title={words.runs} count={heatRuns.length} action={<AddRun />}>
      <ToggleButtonGroup
        className="run-tabs"
        aria-label={words.runs}
        selectionMode="single"
        disallowEmptySelection
        selectedKeys={[open.id]}
        onSelectionChange={([id]) => id && setChosen(String(id))}
      >
        {heatRuns.map((run) => (
          <ToggleButton key={run.id} id={run.id} className="chip">
            {run.name}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
      <RunEditor key={open.id} run={open} place={heatRuns.indexOf(open)} count={heatRuns.length} />
    </Section>
  );
}

function AddRun() {
  const app = useApp();
  const { sites } = useDocument().plan;
  const side = useAppState((state) => state.view.side);
  const add = (kind: HeatRun['kind']) =>
    app.bench.apply(editLabels.addRun, (document) =>
      addRun(document, kind, sites[0]?.side ?? side, words.runKinds[kind]),
    );
  return (
    <MenuTrigger>
      <BareButton className="icon-button small" aria-label={words.addRun}>
        <Icon of={Plus} size={16} />
      </BareButton>
      <Popover className="popover" placement="bottom end">
        <Menu className="menu" items={kinds} onAction={(kind) => add(kind as HeatRun['kind'])}>
          {(kind) => (
            <MenuItem id={kind.id} className="menu-item">
              {kind.label}
            </MenuItem>
          )}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

function RunEditor({ run, place, count }: { run: HeatRun; place: number; count: number }) {
  const app = useApp();
  const name = useTypedEdit(
    `${editLabels.run} ${run.id}`,
    (value) => (document) => setRunFields(document, run.id, { name: value }),
  );
  return (
    <>
      <div className="run-head">
        <TextEntry label={words.runName} bare value={run.name} longest={100} needed {...name} />
        <Choice
          label={words.run}
          bare
          value={run.kind}
          items={kinds}
          onChange={(kind) => app.bench.apply(editLabels.run, (document) => setRunFields(document, run.id, { kind }))}
        />
        <RunMenu run={run} place={place} count={count} />
      </div>
      <ProfileChart run={run} />
      <SegmentTable run={run} />
      <RunSites run={run} />
    </>
  );
}

/** Which of several sites of this side the run serves. */
function RunSites({ run }: { run: HeatRun }) {
  const app = useApp();
  const sites = useDocument().plan.sites.filter((site) => site.side === run.side);
  if (sites.length < 2) return null;
  return (
    <div className="shown-toggles">
      <span className="soft">{words.runSites}</span>
      {sites.map((site) => (
        <Check
          key={site.id}
          on={run.siteIds.includes(site.id)}
          onChange={(on) => app.bench.apply(editLabels.run, (document) => setRunSite(document, run.id, site.id, on))}
        >
          {site.name}
        </Check>
      ))}
    </div>
  );
}

function RunMenu({ run, place, count }: { run: HeatRun; place: number; count: number }) {
  const app = useApp();
  const acts: Record<string, () => void> = {
    duplicate: () =>
      app.bench.apply(editLabels.copyRun, (document) => duplicateRun(document, run.id, words.copyOf(run.name))),
    up: () => app.bench.apply(editLabels.run, (document) => moveRun(document, run.id, place - 1)),
    down: () => app.bench.apply(editLabels.run, (document) => moveRun(document, run.id, place + 1)),
    remove: () => app.bench.apply(editLabels.removeRun, (document) => removeRun(document, run.id)),
  };
  const items = [
    { id: 'duplicate', label: words.duplicate },
    ...(place > 0 ? [{ id: 'up', label: words.moveUp }] : []),
    ...(place < count - 1 ? [{ id: 'down', label: words.moveDown }] : []),
    { id: 'remove', label: words.remove },
  ];
  return (
    <MenuTrigger>
      <BareButton className="icon-button small" aria-label={words.runMenu(run.name)}>
        <Icon of={Ellipsis} size={16} />
      </BareButton>
      <Popover className="popover" placement="bottom end">
        <Menu className="menu" items={items} onAction={(id) => acts[String(id)]()}>
          {(item) => (
            <MenuItem id={item.id} className="menu-item">
              {item.label}
            </MenuItem>
          )}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
