import { useEffect, useMemo, useRef, useState } from 'react';
import type { CurveSet } from '../../../../shared-types/evaluation.ts';
import { playableRevision } from '../../../state/playback.ts';
import { useApp, useAppState } from '../../../state/use-app.ts';
import { type Draft, startGuess } from './draft.ts';

/** Where the run likely began, by the readings that the newest evaluation expects; taken once for each log. */
export function useLikelyStart(draft: Draft, take: (startS: number) => void): number | null {
  const app = useApp();
  const revision = useAppState(playableRevision);
  const id = useAppState((state) => state.ticket?.id);
  const [curves, setCurves] = useState<CurveSet | null>(null);
  const { runId, log, columns } = draft;
  const tagIds = columns.filter((tagId) => tagId !== null).join('\n');
  useEffect(() => {
    if (revision === null || !id || tagIds === '') return;
    let dropped = false;
    const wanted = { id, revision, runId, refdes: [], tagIds: tagIds.split('\n') };
    void app.backend.request('evaluation.curves', wanted).then((answer) => {
      if (answer.ok && !dropped) setCurves(answer.value);
    });
    return () => {
      dropped = true;
    };
  }, [app, revision, id, runId, tagIds]);
  const likelyS = useMemo(() => (curves ? startGuess({ log, columns }, curves) : null), [curves, log, columns]);
  const taken = useRef<unknown>(null);
  useEffect(() => {
    if (likelyS === null || taken.current === log) return;
    taken.current = log;
    take(likelyS);
  }, [likelyS, log, take]);
  return likelyS;
}
