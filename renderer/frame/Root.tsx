import { useEffect } from 'react';
import { I18nProvider } from 'react-aria-components';
import { listenToKeys } from '../actions/key-handler.ts';
import { loadPictures } from '../photos/picture-loader.ts';
import { StartPage } from '../stages/start/StartPage.tsx';
import { type App, startApp } from '../state/app.ts';
import { isDark } from '../state/canvas-model-of.ts';
import { AppContext, useAppState } from '../state/use-app.ts';
import { keepViews } from '../state/view-memory.ts';
import { Dialogs } from './Dialogs.tsx';
import { DropEverywhere } from './DropEverywhere.tsx';
import { Frame } from './Frame.tsx';
import { Notices } from './Notices.tsx';

/** The whole window: the shelf, or the frame with the open ticket. */
export function Root({ app }: { app: App }) {
  useEffect(() => startApp(app), [app]);
  useEffect(() => listenToKeys(app), [app]);
  useEffect(() => loadPictures(app), [app]);
  useEffect(() => followSystemTheme(app), [app]);
  useEffect(() => keepViews(app), [app]);
  return (
    <AppContext value={app}>
      <I18nProvider locale="en-GB">
        <Theme />
        <Screen />
        <Dialogs />
        <Notices />
        <DropEverywhere />
      </I18nProvider>
    </AppContext>
  );
}

function Screen() {
  const id = useAppState((state) => state.ticket?.id ?? null);
  return id ? <Frame key={id} /> : <StartPage />;
}

function Theme() {
  const dark = useAppState(isDark);
  useEffect(() => {
    document.documentElement.dataset.theme = dark ? 'dark' : 'light';
  }, [dark]);
  return null;
}

function followSystemTheme(app: App): () => void {
  const query = window.matchMedia('(prefers-color-scheme: dark)');
  const read = () => app.store.set((state) => ({ ...state, systemDark: query.matches }));
  read();
  query.addEventListener('change', read);
  return () => query.removeEventListener('change', read);
}
