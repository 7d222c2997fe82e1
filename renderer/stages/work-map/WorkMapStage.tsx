import { Printer } from 'lucide-react';
import { useState } from 'react';
import type { Assessment } from '../../../shared-types/evaluation.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import type { SheetFormat } from '../../../shared-types/sheet-format.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { workMapWords as words } from '../../../shared-types/words/window/work-map.ts';
import { saveSheet } from '../../state/save-sheet.ts';
import { stepPlanOf } from '../../state/step-plan.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';
import { openOfWorkMap } from './open-of-work-map.ts';
import '../stages.css';

/** What the sheet will hold, what is open before it is printed, and the sheet itself as a file. */
export function WorkMapStage() {
  const document = useDocument();
  const { plan } = document;
  const assessment = useAppState((state) => state.evaluation.assessment);
  const app = useApp();
  useAppState((state) => openOfWorkMap(state).join());
  const open = openOfWorkMap(app.store.get());
  return (
    <>
      <p className="stage-lead">{words.intro}</p>
      <SaveMap />
      <Section title={words.open} count={open.length > 0 ? open.length : undefined}>
        {open.length === 0 ? <p className="empty">{words.settled}</p> : <Lines of={open} />}
      </Section>
      <Section title={words.contents}>
        <Lines of={contentsOf(plan, assessment, stepPlanOf(document, assessment).steps.length)} />
      </Section>
    </>
  );
}

const Lines = ({ of: lines }: { of: readonly string[] }) => (
  <ul className="sheet-lines">
    {lines.map((line) => (
      <li key={line}>{line}</li>
    ))}
  </ul>
);

function SaveMap() {
  const app = useApp();
  const busy = useAppState((state) => state.busy);
  const [saved, setSaved] = useState<string | null>(null);
  const save = async (format: SheetFormat) => {
    const sheet = await saveSheet(app, format);
    if (sheet) setSaved(words.saved(sheet.fileName, sheet.pages));
  };
  return (
    <div className="save-map">
      <Button look="primary" icon={Printer} disabled={busy} onPress={() => void save('pdf')}>
        {busy ? frameWords.printing : words.save}
      </Button>
      <div className="save-pages">
        {(['svg', 'png'] as const).map((format) => (
          <Button key={format} small disabled={busy} onPress={() => void save(format)}>
            {words.savePages(format.toUpperCase())}
          </Button>
        ))}
      </div>
      {saved && <p role="status">{saved}</p>}
    </div>
  );
}

function contentsOf(plan: Plan, assessment: Assessment | null, steps: number): string[] {
  const lines = words.lines;
  const removals = plan.tags.filter((tag) => tag.kind === 'remove').length;
  const shields = plan.tags.filter((tag) => tag.kind === 'shield').length;
  const points = plan.tags.flatMap((tag) => (tag.kind === 'watchPoint' ? [tag.name] : []));
  const exceptions =
    assessment?.actions.filter((action) => action.action !== 'leave' && action.action !== 'leave-will-reflow').length ??
    0;
  return [
    lines.header(plan.ticket.number),
    ...(plan.sites.length > 0 ? [lines.sites(plan.sites.map((site) => site.name))] : []),
    lines.board,
    ...(removals > 0 ? [lines.removals(removals)] : []),
    ...(shields > 0 ? [lines.shields(shields)] : []),
    ...(exceptions > 0 ? [lines.exceptions(exceptions)] : []),
    ...(plan.heatRuns.length > 0 ? [lines.runs(plan.heatRuns.map((run) => run.name))] : []),
    ...(points.length > 0 ? [lines.watch(points)] : []),
    ...(assessment && assessment.cautions.length > 0 ? [lines.cautions(assessment.cautions.length)] : []),
    ...(steps > 0 ? [lines.steps(steps)] : []),
    lines.signOff,
  ];
}
