import { ToggleButton } from 'react-aria-components';
import type { Part } from '../../shared-types/board.ts';
import { type PackageFit, suggestPackages } from '../../shared-types/rules/suggest-packages.ts';
import { partEditWords, placeWords as words } from '../../shared-types/words/window/parts.ts';
import { asDrawn, takeFit } from '../editing/drawn-body.ts';
import { useOwnPackages } from '../stages/board/parts/use-own-packages.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { Section } from '../widgets/Section.tsx';

/** The packages that come near the body drawn last, with how far they are off; shown while its part is selected. */
export function DrawnSection({ part }: { part: Part }) {
  const app = useApp();
  const own = useOwnPackages();
  const drawn = useAppState((state) => state.view.placing.drawn);
  if (drawn?.refdes !== part.refdes) return null;
  const { lengthMm, widthMm } = drawn;
  const fits: Pick<PackageFit, 'offer' | 'turned' | 'errorMm'>[] = [
    ...suggestPackages(lengthMm, widthMm, { own, most: 6 }),
    { offer: asDrawn(lengthMm, widthMm), turned: false, errorMm: 0 },
  ];
  const take = (fit: (typeof fits)[number]) =>
    app.bench.apply(partEditWords.package([part.refdes]), (document) => takeFit(document, drawn, fit));
  return (
    <Section title={words.drawnTitle}>
      <p className="soft">{words.drawnAs(words.size(lengthMm, widthMm, null))}</p>
      <div className="fit-list">
        {fits.map((fit) => (
          <ToggleButton
            key={`${fit.offer.from} ${fit.offer.name}`}
            isSelected={fit.offer.name === part.package.name}
            onChange={() => take(fit)}
          >
            <span>{fit.offer.from === 'typed' ? words.keepDrawn : fit.offer.name}</span>
            <span className="off">{[words.off(fit.errorMm), ...(fit.turned ? [words.turned] : [])].join(', ')}</span>
          </ToggleButton>
        ))}
      </div>
    </Section>
  );
}
