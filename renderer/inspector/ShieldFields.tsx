import type { ShieldParameter } from '../../shared-types/library/library-types.ts';
import { gelWaterG, layersOf, SHIELDS, shieldById } from '../../shared-types/library/shields.ts';
import type { TagOf } from '../../shared-types/tags.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { planWords as words } from '../../shared-types/words/window/plan.ts';
import { setShield, setTagFields } from '../editing/tags.ts';
import { useApp, useAppState, useDocument } from '../state/use-app.ts';
import { useUnits } from '../state/use-units.ts';
import { Choice } from '../widgets/Choice.tsx';
import { NumberEntry } from '../widgets/NumberEntry.tsx';
import { LengthEntry } from '../widgets/UnitEntry.tsx';

const shields = SHIELDS.map((shield) => ({ id: shield.id, label: shield.name }));

/** Which shield, its gap, layers or water where those are the bench's own, and what it is not good for. */
export function ShieldFields({ tag }: { tag: TagOf<'shield'> }) {
  const app = useApp();
  const part = useDocument().board.parts.find((one) => one.refdes === tag.refdes);
  const shield = shieldById(tag.shield);
  const set = (fields: Partial<TagOf<'shield'>>) =>
    app.bench.apply(editLabels.tagFields, (document) => setTagFields(document, tag.id, 'shield', fields));
  const may = (parameter: ShieldParameter) => shield?.adjustable.includes(parameter);
  const gap = shield && layersOf(shield, tag).find((layer) => layer.kind === 'air-gap');
  const { lengthMm, widthMm } = part?.package ?? { lengthMm: 0, widthMm: 0 };
  const round = part?.package.shape === 'round' ? Math.PI / 4 : 1;
  return (
    <>
      <Choice
        label={words.shield}
        stacked
        value={tag.shield}
        items={shields}
        onChange={(id) => app.bench.apply(editLabels.tagFields, (document) => setShield(document, tag.id, id))}
      />
      {may('gapMm') && gap && (
        <LengthEntry
          label={words.shieldGap}
          value={gap.gapMm}
          least={0.1}
          most={20}
          onChange={(gapMm) => gapMm && set({ gapMm })}
        />
      )}
      {may('layers') && (
        <NumberEntry
          label={words.shieldLayers}
          value={tag.layers ?? 1}
          least={1}
          most={20}
          decimals={0}
          onChange={(layers) => layers && set({ layers })}
        />
      )}
      {shield && may('waterG') && (
        <NumberEntry
          label={words.shieldWater}
          value={gelWaterG(shield, tag, lengthMm * widthMm * round)}
          unit="g"
          least={0.001}
          most={200}
          decimals={3}
          onChange={(waterG) => waterG && set({ waterG })}
        />
      )}
      {shield?.mass?.kind === 'gel' && <DryTime refdes={tag.refdes} />}
      <p className="why-not">{shield && words.notGoodFor(shield.notGoodFor)}</p>
      <p className="why-not">{shield?.source.text}</p>
    </>
  );
}

/** When the gel falls dry, run by run, as far as the figures are there. */
function DryTime({ refdes }: { refdes: string }) {
  const { measures } = useUnits();
  const notices = useAppState((state) => state.evaluation.assessment?.evaluation.notices);
  const said = (notices ?? []).filter((one) => one.code.startsWith('gel') && one.figures.refdes === refdes);
  return said.map(({ place, figures }) => (
    <p key={place}>
      {words.gelDries(String(figures.run), 'seconds' in figures ? measures.seconds(Number(figures.seconds)) : null)}
    </p>
  ));
}
