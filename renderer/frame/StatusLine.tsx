import { bandWords } from '../../shared-types/words/uncertainty.ts';
import { frameWords as words } from '../../shared-types/words/window/frame.ts';
import { bandAt } from '../canvas/heat/shown-field.ts';
import type { AppState } from '../state/app-state.ts';
import { isStale } from '../state/evaluation-inbox.ts';
import { momentShown } from '../state/playback.ts';
import { wordsOf } from '../state/problem-words.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { useUnits } from '../state/use-units.ts';
import { Button } from '../widgets/Buttons.tsx';

/** Where the pointer is, how hot it gets there, what is being worked out, and the zoom. */
export function StatusLine() {
  return (
    <footer className="status-line">
      <Pointer />
      <Hint />
      <span className="space" />
      <Progress />
      <Zoom />
    </footer>
  );
}

/** Band of the peak that the map shows under the pointer, K; a moment of a run has none. */
function bandUnderPointer(state: AppState): number | null {
  const { hover, side, shownRunId } = state.view;
  const { assessment } = state.evaluation;
  return hover && bandAt({ assessment, moment: momentShown(state), shownRunId }, side, hover.at);
}

function Pointer() {
  const hover = useAppState((state) => state.view.hover);
  const evaluation = useAppState((state) => state.evaluation.assessment?.evaluation ?? null);
  const bandK = useAppState(bandUnderPointer);
  const { showMm, lengthSign, measures } = useUnits();
  if (!hover) return <span>{words.offBoard}</span>;
  const digits = lengthSign === 'mil' ? 0 : 1;
  const place = (mm: number) => showMm(mm).toFixed(digits).padStart(6, '\u2007');
  const name = hover.pick?.kind === 'part' ? hover.pick.refdes : null;
  return (
    <>
      <span className="place">
        x <span className="figure">{place(hover.at.x)}</span> y <span className="figure">{place(hover.at.y)}</span>{' '}
        {lengthSign}
      </span>
      {evaluation && hover.temperatureC !== null && (
        <span>
          <span className="figure">{measures.temperature(hover.temperatureC)}</span>
          {bandK !== null && ` ${bandWords.plusMinus(measures.difference(bandK))}`}
          {evaluation.bands === 'not-computed' && `, ${words.noBand}`}
        </span>
      )}
      {name && <span className="figure">{name}</span>}
    </>
  );
}

function Hint() {
  const hint = useAppState((state) => state.view.hint);
  return hint && <span role="status">{hint}</span>;
}

function Progress() {
  const app = useApp();
  const { running, stale, cancelled, problem } = useAppState((state) => ({
    running: state.evaluation.running,
    problem: state.evaluation.problem,
    stale: isStale(state.evaluation),
    cancelled: state.evaluation.cancelled,
  }));
  if (running)
    return (
      <span className="progress" role="status">
        {words.computing[running.phase]}
        <span
          className="track"
          role="progressbar"
          aria-label={words.computing[running.phase]}
          aria-valuenow={Math.round(running.share * 100)}
          aria-valuemin={0}
          aria-valuemax={100}
        >
          <span className="done" style={{ width: `${running.share * 100}%` }} />
        </span>
        <Button look="link" small onPress={() => app.tickets.cancelEvaluation()}>
          {words.cancelEvaluation}
        </Button>
      </span>
    );
  if (cancelled)
    return (
      <span className="progress">
        {words.stopped}
        <Button look="link" small onPress={() => app.tickets.runEvaluation()}>
          {words.runAgain}
        </Button>
      </span>
    );
  if (problem) return <span role="status">{wordsOf(problem).join(' ')}</span>;
  return stale ? <span>{words.stale}</span> : null;
}

function Zoom() {
  const zoom = useAppState((state) => Math.round(state.view.zoom * 10) / 10);
  if (!zoom) return null;
  return (
    <span>
      {words.zoom} <span className="figure">{zoom}</span> px/mm
    </span>
  );
}
