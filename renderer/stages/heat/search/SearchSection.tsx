import { useState } from 'react';
import type { HeatRun, Plan } from '../../../../shared-types/plan.ts';
import type { Problem } from '../../../../shared-types/problem.ts';
import type { SearchBounds } from '../../../../shared-types/profile-search.ts';
import { shapeOf, usualBounds } from '../../../../shared-types/rules/profile-shape.ts';
import { searchWords } from '../../../../shared-types/words/profile-search.ts';
import { searchSectionWords as words } from '../../../../shared-types/words/window/search.ts';
import { PROFILE_SEARCH_ID } from '../../../state/element-ids.ts';
import { wordsOf } from '../../../state/problem-words.ts';
import { runStudy } from '../../../state/studies.ts';
import { useApp, useAppState, useDocument } from '../../../state/use-app.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Choice } from '../../../widgets/Choice.tsx';
import { Fold } from '../../../widgets/Section.tsx';
import { StudyProgress } from '../StudyProgress.tsx';
import { BoundFields, swappedBound } from './BoundFields.tsx';
import { SearchFound } from './SearchFound.tsx';
import './search.css';

/** A better profile for a run: in which bounds, and what the search found there. */
export function SearchSection() {
  const { plan } = useDocument();
  const shownRunId = useAppState((state) => state.view.shownRunId);
  const found = useAppState((state) => state.search);
  const [chosen, setChosen] = useState<string | null>(null);
  const runs = plan.heatRuns.filter((run) => shapeOf(run) !== null);
  const wantedId = chosen ?? found?.answer.runId ?? shownRunId;
  const run = runs.find(({ id }) => id === wantedId) ?? runs[0];
  const calibrated = plan.station.calibration !== null;
  return (
    <Fold
      id={PROFILE_SEARCH_ID}
      title={words.title}
      summary={calibrated ? words.unlocked : words.locked}
      open={found !== null}
    >
      <p className="empty">{words.lead}</p>
      {!calibrated && <p className="search-warning">{searchWords.notCalibrated}</p>}
      {runs.length > 1 && (
        <Choice
          label={words.run}
          value={run?.id ?? null}
          items={runs.map(({ id, name }) => ({ id, label: name }))}
          onChange={setChosen}
        />
      )}
      {run ? <RunSearch key={run.id} run={run} plan={plan} /> : <p className="empty">{words.noRun}</p>}
    </Fold>
  );
}

function RunSearch({ run, plan }: { run: HeatRun; plan: Plan }) {
  const app = useApp();
  const id = useAppState((state) => state.ticket?.id);
  const searching = useAppState((state) => state.study?.about === 'search');
  const found = useAppState((state) => (state.search?.answer.runId === run.id ? state.search : null));
  const [changed, setChanged] = useState<SearchBounds | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const shape = shapeOf(run);
  if (!shape) return null;
  const bounds = changed ?? usualBounds(run, shape, plan);
  const swapped = swappedBound(bounds);
  const find = async () => {
    const document = app.store.get().ticket?.document;
    if (!id || !document) return;
    setProblem(null);
    setChanged(bounds);
    const answer = await runStudy(app, 'search', () =>
      app.backend.request('search.run', { id, order: { runId: run.id, bounds } }),
    );
    if (answer.ok && app.store.get().ticket?.id === id)
      app.store.set((state) => ({ ...state, search: { answer: answer.value, document } }));
    else if (!answer.ok && answer.problem.code !== 'cancelled') setProblem(answer.problem);
  };
  return (
    <>
      <BoundFields bounds={bounds} onChange={setChanged} />
      {swapped && <p role="alert">{swapped}</p>}
      {problem && <p role="alert">{wordsOf(problem).join('. ')}</p>}
      {searching ? (
        <StudyProgress about="search" text={words.searching} />
      ) : (
        <div className="station-acts">
          <Button small look="primary" disabled={swapped !== null} onPress={() => void find()}>
            {found ? words.again : words.find}
          </Button>
          {changed && (
            <Button small look="quiet" onPress={() => setChanged(null)}>
              {words.usual}
            </Button>
          )}
        </div>
      )}
      {found && <SearchFound key={found.document.plan.ticket.number} run={run} found={found} />}
    </>
  );
}
