import { useEffect, useState } from 'react';
import type { Problem } from '../../../shared-types/problem.ts';
import type { App } from '../../state/app.ts';
import { isStale } from '../../state/evaluation-inbox.ts';
import { useApp, useAppState } from '../../state/use-app.ts';

/** What is shown of the sheet: addresses of its pages, whether newer ones are on their way, and what stands in the way. */
export type SheetPages = { urls: readonly string[]; drawing: boolean; problem: Problem | null };

const NOTHING: SheetPages = { urls: [], drawing: true, problem: null };
/** Rest after a change before the sheet is drawn again: a name being typed is one change. */
const REST_MS = 300;

/** The pages of the sheet as they would print now, drawn again whenever plan or figures change. */
export function useSheetPages(): SheetPages {
  const app = useApp();
  const [shown, setShown] = useState(NOTHING);
  const document = useAppState((state) => state.ticket?.document);
  const assessment = useAppState((state) => state.evaluation.assessment);
  const units = useAppState(({ settings }) => `${settings.temperatureUnit} ${settings.lengthUnit}`);
  const stale = useAppState((state) => isStale(state.evaluation));
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of any of them makes another sheet
  useEffect(() => {
    setShown((before) => ({ ...before, drawing: true }));
    if (stale) return;
    let dropped = false;
    const timer = setTimeout(async () => {
      const next = await ask(app);
      if (!dropped && next) setShown(next);
    }, REST_MS);
    return () => {
      dropped = true;
      clearTimeout(timer);
    };
  }, [app, document, assessment, stale, units]);
  useEffect(() => () => shown.urls.forEach(URL.revokeObjectURL), [shown.urls]);
  return shown;
}

/** Null when the evaluation that it waited for was overtaken: a newer one asks anew. */
async function ask(app: App): Promise<SheetPages | null> {
  await app.tickets.flush();
  const id = app.store.get().ticket?.id;
  if (!id) return null;
  const answer = await app.backend.request('workMap.preview', { id });
  if (!answer.ok)
    return answer.problem.code === 'cancelled' ? null : { urls: [], drawing: false, problem: answer.problem };
  const urls = answer.value.pages.map((page) =>
    URL.createObjectURL(new Blob([new Uint8Array(page)], { type: 'image/svg+xml' })),
  );
  return { urls, drawing: false, problem: null };
}
