import { ChevronDown, ChevronUp } from 'lucide-react';
import { Button as BareButton } from 'react-aria-components';
import { summarise, summaryLine } from '../../shared-types/rules/summary.ts';
import { frameWords } from '../../shared-types/words/window/frame.ts';
import { tableWords as words } from '../../shared-types/words/window/table.ts';
import { useApp, useAppState, useDocument } from '../state/use-app.ts';
import { Icon } from '../widgets/Buttons.tsx';
import { PartsTable } from './PartsTable.tsx';
import './table.css';

/** The parts table at the foot: closed it is one line that speaks in exceptions. */
export function Tray() {
  const app = useApp();
  const open = useAppState((state) => state.settings.trayOpen);
  const label = open ? words.close : words.open;
  return (
    <section className="tray" data-open={open ? '' : undefined} aria-label={words.title}>
      <BareButton
        className="tray-line"
        aria-expanded={open}
        aria-label={label}
        onPress={() => app.changeSettings({ trayOpen: !open })}
      >
        <Icon of={open ? ChevronDown : ChevronUp} size={16} />
        <span className="tray-title">{words.title}</span>
        <SummaryLine />
        <SelectedCount />
      </BareButton>
      {open && <PartsTable />}
    </section>
  );
}

function SummaryLine() {
  const { plan, board } = useDocument();
  const { assessment, running, problem } = useAppState((state) => ({
    assessment: state.evaluation.assessment,
    running: state.evaluation.running,
    problem: state.evaluation.problem,
  }));
  if (assessment) return <Phrases line={summaryLine(summarise(assessment, plan))} />;
  const said = running && !problem ? frameWords.waiting : frameWords.noFigures;
  return (
    <span className="soft">
      {words.partsNoFigures(board.parts.length)}. {said}.
    </span>
  );
}

/** '3 remove · 4 shield': the figures stand out, the words stay quiet. */
function Phrases({ line }: { line: string }) {
  return (
    <span className="phrases">
      {line.split(' · ').map((phrase) => {
        const [, figure, rest] = /^(\d+) (.*)$/.exec(phrase) ?? [];
        return (
          <span key={phrase}>
            {figure ? (
              <>
                <b>{figure}</b> {rest}
              </>
            ) : (
              phrase
            )}
          </span>
        );
      })}
    </span>
  );
}

function SelectedCount() {
  const count = useAppState((state) => state.selection.parts.size);
  return count > 0 ? <span className="soft picked">{words.selected(count)}</span> : null;
}
