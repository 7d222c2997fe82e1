import { PenTool } from 'lucide-react';
import { contourFaultSentence, outlineWords as words } from '../../../shared-types/words/window/outline.ts';
import { actionById } from '../../actions/table.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { emptyDraft, OUTLINE_MODES, type OutlineState } from '../../tools/outline/outline-state.ts';
import { Button, Segmented } from '../../widgets/Buttons.tsx';
import { Check } from '../../widgets/Check.tsx';
import { Section } from '../../widgets/Section.tsx';
import { LengthEntry } from '../../widgets/UnitEntry.tsx';
import { CornerTable } from './CornerTable.tsx';
import { DraftFields } from './DraftFields.tsx';
import { ShapeList } from './ShapeList.tsx';
import './outline.css';

const modes = OUTLINE_MODES.map((id) => ({ id, label: words.modes[id] }));
const targets = (['outline', 'cutout'] as const).map((id) => ({ id, label: words.targets[id] }));

/** Drawing the outline and cutouts, and changing them by hand or by figures. */
export function OutlineSection() {
  const app = useApp();
  const { on, outline } = useAppState((state) => ({
    on: state.view.tool === 'outline',
    outline: state.view.outline,
  }));
  if (!on)
    return (
      <Section title={words.title}>
        <Button icon={PenTool} onPress={() => actionById('tool-outline').run(app)}>
          {words.start}
        </Button>
      </Section>
    );
  return (
    <Section title={words.title}>
      <ToolFields outline={outline} />
      {outline.mode === 'change' ? <ChangeFields outline={outline} /> : <DraftFields outline={outline} />}
      <Refusal outline={outline} />
    </Section>
  );
}

function ToolFields({ outline }: { outline: OutlineState }) {
  const app = useApp();
  const set = (fields: Partial<OutlineState>) => {
    app.bench.setOutline(fields);
    app.canvas.current?.focus();
  };
  const free = outline.mode === 'polygon' || outline.mode === 'rectangle' || outline.mode === 'circle';
  return (
    <>
      <div className="outline-modes">
        <Segmented
          label={words.mode}
          value={outline.mode}
          choices={modes}
          onChange={(mode) => set({ mode, draft: emptyDraft, refused: null, wanted: null })}
        />
      </div>
      {free && (
        <div className="field">
          <span className="field-label">{words.target}</span>
          <Segmented
            label={words.target}
            value={outline.target}
            choices={targets}
            onChange={(target) => set({ target, refused: null })}
          />
        </div>
      )}
      <Check on={outline.snapping} onChange={(snapping) => app.bench.setOutline({ snapping })}>
        {words.snapping}
      </Check>
      <LengthEntry
        label={words.grid}
        value={outline.gridMm}
        least={0.01}
        most={50}
        onChange={(gridMm) => gridMm && app.bench.setOutline({ gridMm })}
      />
    </>
  );
}

function ChangeFields({ outline }: { outline: OutlineState }) {
  return (
    <>
      <p className="empty">{words.hints.change}</p>
      <ShapeList picked={outline.picked} />
      {outline.picked && <CornerTable key={String(outline.picked.id)} picked={outline.picked} />}
    </>
  );
}

function Refusal({ outline }: { outline: OutlineState }) {
  const { lengthSign } = useUnits();
  return (
    <p className="outline-refusal" role="alert">
      {outline.refused && contourFaultSentence(outline.refused, lengthSign)}
    </p>
  );
}
