import { ALLOYS } from '../../shared-types/library/alloys.ts';
import { MOISTURE_LEVELS } from '../../shared-types/library/moisture.ts';
import type { Incoming, Site } from '../../shared-types/plan.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { planWords as words } from '../../shared-types/words/window/plan.ts';
import { setSiteFields } from '../editing/sites.ts';
import { setTagFields } from '../editing/tags.ts';
import { useApp, useDocument, useTypedEdit } from '../state/use-app.ts';
import { useUnits } from '../state/use-units.ts';
import { Check } from '../widgets/Check.tsx';
import { Choice } from '../widgets/Choice.tsx';
import { NumberEntry } from '../widgets/NumberEntry.tsx';
import { TextEntry } from '../widgets/TextEntry.tsx';
import { LengthEntry } from '../widgets/UnitEntry.tsx';

const LEVELS: { id: Incoming['moistureLevel']; label: string }[] = [
  { id: 'unknown', label: words.notTold },
  ...MOISTURE_LEVELS.map((id) => ({ id, label: id })),
];

/** Joints, rework area and what is exchanged. */
export function SiteFields({ site }: { site: Site }) {
  const app = useApp();
  const { measures } = useUnits();
  const set = (fields: Parameters<typeof setSiteFields>[2]) =>
    app.bench.apply(editLabels.siteFields, (document) => setSiteFields(document, site.id, fields));
  const area = (fields: Partial<Site['area']>) => set({ area: { ...site.area, ...fields } });
  const alloys = [
    { id: 'unknown', label: words.alloyUnknown },
    ...ALLOYS.map((alloy) => ({
      id: alloy.id,
      label: alloy.name,
      more: `${measures.degrees(alloy.solidusC)}–${measures.temperature(alloy.liquidusC)}`,
    })),
  ];
  return (
    <>
      <ExchangeFields site={site} />
      <Choice label={words.alloyOff} value={site.alloyOff} items={alloys} onChange={(alloyOff) => set({ alloyOff })} />
      <Choice label={words.alloyOn} value={site.alloyOn} items={alloys} onChange={(alloyOn) => set({ alloyOn })} />
      <HandlingFields site={site} set={set} />
      <FenceFields site={site} set={set} />
      <LengthEntry
        label={words.areaLength}
        value={site.area.lengthMm}
        least={0.1}
        most={2000}
        onChange={(lengthMm) => lengthMm && area({ lengthMm })}
      />
      <LengthEntry
        label={words.areaWidth}
        value={site.area.widthMm}
        least={0.1}
        most={2000}
        onChange={(widthMm) => widthMm && area({ widthMm })}
      />
      <LengthEntry label={words.areaX} value={site.area.x} onChange={(x) => x !== null && area({ x })} />
      <LengthEntry label={words.areaY} value={site.area.y} onChange={(y) => y !== null && area({ y })} />
      <NumberEntry
        label={words.areaTurn}
        value={site.area.turnDeg}
        unit="°"
        onChange={(turnDeg) => turnDeg !== null && area({ turnDeg })}
      />
    </>
  );
}

/** Foil stood round the site; a hood or an emitter needs none. */
function FenceFields({ site, set }: { site: Site; set: (fields: Partial<Site>) => void }) {
  const { kind } = useDocument().plan.station.nozzle;
  const { fence } = site;
  if (kind === 'hood' || kind === 'infrared') return null;
  return (
    <>
      <Check on={fence !== null} onChange={(on) => set({ fence: on ? { marginMm: 3, rimGapMm: 4 } : null })}>
        {words.fence}
      </Check>
      {fence && (
        <>
          <LengthEntry
            label={words.fenceMargin}
            value={fence.marginMm}
            least={0}
            most={100}
            onChange={(marginMm) => marginMm !== null && set({ fence: { ...fence, marginMm } })}
          />
          <LengthEntry
            label={words.fenceGap}
            value={fence.rimGapMm}
            least={0.01}
            most={20}
            onChange={(rimGapMm) => rimGapMm && set({ fence: { ...fence, rimGapMm } })}
          />
        </>
      )}
    </>
  );
}

/** What was done here before, and how moist the part may be that goes on. */
function HandlingFields({ site, set }: { site: Site; set: (fields: Partial<Site>) => void }) {
  const { incoming } = site;
  const change = (fields: Partial<Incoming>) => set({ incoming: { ...incoming, ...fields } });
  return (
    <>
      <NumberEntry
        label={words.exchangedBefore}
        value={site.exchangedBefore}
        least={0}
        most={20}
        decimals={0}
        emptyIs={words.notTold}
        onChange={(exchangedBefore) => set({ exchangedBefore })}
      />
      <Choice
        label={words.moistureLevel}
        value={incoming.moistureLevel}
        items={LEVELS}
        onChange={(moistureLevel) => change({ moistureLevel })}
      />
      <NumberEntry
        label={words.openTime}
        value={incoming.openH}
        unit="h"
        least={0}
        most={1e6}
        emptyIs={words.notTold}
        onChange={(openH) => change({ openH })}
      />
      <LengthEntry
        label={words.bodyThickness}
        value={incoming.thicknessMm}
        least={0.1}
        most={50}
        emptyIs={words.asOutgoing}
        onChange={(thicknessMm) => change({ thicknessMm })}
      />
    </>
  );
}

/** What comes off and what goes on: they stand in the site's replace tag. */
function ExchangeFields({ site }: { site: Site }) {
  const tag = useDocument().plan.tags.find((one) => one.kind === 'replace' && one.siteId === site.id);
  const id = tag?.id ?? '';
  const off = useTypedEdit(
    `${words.comesOff} ${site.target}`,
    (comesOff) => (document) => setTagFields(document, id, 'replace', { comesOff }),
  );
  const on = useTypedEdit(
    `${words.goesOn} ${site.target}`,
    (goesOn) => (document) => setTagFields(document, id, 'replace', { goesOn }),
  );
  if (tag?.kind !== 'replace') return null;
  return (
    <>
      <TextEntry label={words.comesOff} value={tag.comesOff} longest={500} {...off} />
      <TextEntry label={words.goesOn} value={tag.goesOn} longest={500} {...on} />
    </>
  );
}
