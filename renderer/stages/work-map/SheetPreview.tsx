import { useState } from 'react';
import { sheetPreviewWords as words } from '../../../shared-types/words/window/sheet-preview.ts';
import { wordsOf } from '../../state/problem-words.ts';
import { useAppState } from '../../state/use-app.ts';
import { Segmented } from '../../widgets/Buttons.tsx';
import { useSheetPages } from './use-sheet-pages.ts';
import './sheet-preview.css';

type Fit = 'width' | 'page';

/** The sheet as it will print, over the canvas while the stage Work map is open. */
export function SheetPreview() {
  const open = useAppState((state) => state.view.stage === 'workMap');
  return open ? <Pages /> : null;
}

function Pages() {
  const { urls, drawing, problem } = useSheetPages();
  const [fit, setFit] = useState<Fit>('width');
  const [page, setPage] = useState(1);
  const choices = (['width', 'page'] as const).map((id) => ({ id, label: words.fit[id] }));
  return (
    <section className="sheet-preview" aria-label={words.sheet}>
      <div className="sheet-bar">
        <span role="status">
          {urls.length > 0 && <span className="figure">{words.page(Math.min(page, urls.length), urls.length)}</span>}
          {drawing && <span className="soft">{words.drawing}</span>}
        </span>
        {urls.length > 0 && <Segmented label={words.fitLabel} value={fit} choices={choices} onChange={setFit} />}
      </div>
      {problem ? (
        <p className="sheet-problem">{wordsOf(problem).join(' ')}</p>
      ) : (
        <div
          className="sheet-pages"
          data-fit={fit}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
          tabIndex={0}
          onScroll={(event) => setPage(pageInView(event.currentTarget))}
        >
          {urls.map((url, index) => (
            <img
              key={url}
              src={url}
              alt={words.page(index + 1, urls.length)}
              draggable={false}
              data-old={drawing ? '' : undefined}
            />
          ))}
        </div>
      )}
    </section>
  );
}

/** Number of the first page of which at least a half shows. */
function pageInView(scroller: HTMLElement): number {
  const pages = [...scroller.children] as HTMLElement[];
  const found = pages.findIndex((page) => page.offsetTop + page.offsetHeight / 2 > scroller.scrollTop);
  return found < 0 ? pages.length : found + 1;
}
