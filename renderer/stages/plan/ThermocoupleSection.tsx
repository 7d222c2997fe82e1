import { bandWords, thermocoupleWords as words } from '../../../shared-types/words/uncertainty.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { openPlaces, placeThermocouples } from '../../editing/thermocouples.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';
import { TagGlyph } from '../../widgets/TagGlyph.tsx';

/** How many are offered at once: as many as a usual bench reads. */
const AT_ONCE = 3;

/** Where thermocouples make the figures surest, what each should read, and what is left of the band then. */
export function ThermocoupleSection() {
  const app = useApp();
  const document = useDocument();
  const { measures } = useUnits();
  const places = useAppState((state) => state.evaluation.assessment?.thermocouples);
  const open = openPlaces(document, places ?? []).slice(0, AT_ONCE);
  if (open.length === 0) return null;
  const targetOf = (siteId: string | null) => document.plan.sites.find((site) => site.id === siteId)?.target ?? '';
  const place = () => app.bench.apply(editLabels.thermocouples, (before) => placeThermocouples(before, open));
  return (
    <Section
      title={words.title}
      action={
        <Button small onPress={place}>
          {words.place(open.length)}
        </Button>
      }
    >
      <ul className="rows">
        {open.map((one) => (
          <li className="row" key={`${one.side} ${one.x} ${one.y}`}>
            <TagGlyph kind="watchPoint" />
            <span className="who">
              <span className="name">{one.refdes ?? targetOf(one.siteId)}</span>
              <span className="why">
                {one.refdes ? words.onPart : words.atCorner}{' '}
                {words.reads(measures.temperature(one.expectedC), bandWords.plusMinus(measures.difference(one.bandK)))}{' '}
                {words.leaves(bandWords.plusMinus(measures.difference(one.targetBandK)))}
              </span>
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
}
