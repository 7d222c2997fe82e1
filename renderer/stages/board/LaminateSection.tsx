import { boardWords as words } from '../../../shared-types/words/window/board.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { stationWords } from '../../../shared-types/words/window/station.ts';
import {
  type CopperLayer,
  POURS,
  poursOf,
  setLaminate,
  setLayer,
  setLayerCount,
  setPours,
} from '../../editing/board-data.ts';
import type { Edit } from '../../state/canvas-model.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { Check } from '../../widgets/Check.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { Fold, Section } from '../../widgets/Section.tsx';
import { LengthEntry } from '../../widgets/UnitEntry.tsx';

/** Default cover of a layer, percent: continuous copper only. */
const USUAL_COVER = { signal: 20, plane: 80 } as const;
const pours = POURS.map((id) => ({ id, label: stationWords.poursChoices[id] }));
const kinds = (['signal', 'plane'] as const).map((id) => ({ id, label: words.kinds[id] }));

export function LaminateSection() {
  const app = useApp();
  const { laminate } = useDocument().board;
  const edit = (change: Edit) => app.bench.apply(editLabels.laminate, change);
  return (
    <>
      <Section title={words.laminate}>
        <LengthEntry
          label={words.thickness}
          value={laminate.thicknessMm}
          least={0.05}
          most={20}
          onChange={(value) => value && edit((document) => setLaminate(document, { thicknessMm: value }))}
        />
        <NumberEntry
          label={words.layerCount}
          value={laminate.layers.length}
          least={0}
          most={64}
          decimals={0}
          onChange={(value) => value !== null && edit((document) => setLayerCount(document, value))}
        />
        {laminate.layers.length > 0 && (
          <Choice
            label={stationWords.pours}
            value={poursOf(laminate)}
            placeholder={stationWords.poursOther}
            items={pours}
            onChange={(next) => edit((document) => setPours(document, next))}
          />
        )}
        <Check
          on={laminate.layersKnown}
          onChange={(layersKnown) => edit((document) => setLaminate(document, { layersKnown }))}
        >
          {words.layersKnown}
        </Check>
        {!laminate.layersKnown && <p className="empty">{words.layersGuess}</p>}
      </Section>
      <Fold title={words.layer} summary={summaryOf(laminate.layers)}>
        <LayerTable layers={laminate.layers} edit={edit} />
      </Fold>
    </>
  );
}

const summaryOf = (layers: readonly CopperLayer[]): string => {
  const planes = layers.filter((layer) => layer.kind === 'plane').length;
  return `${layers.length - planes} × ${words.kinds.signal.toLowerCase()}, ${planes} × ${words.kinds.plane.toLowerCase()}`;
};

function LayerTable({ layers, edit }: { layers: readonly CopperLayer[]; edit: (change: Edit) => void }) {
  return (
    <div className="layer-table">
      <span className="head" />
      <span className="head">{words.kind}</span>
      <span className="head right">{words.copper}</span>
      <span className="head right">{words.cover}</span>
      {layers.map((layer, index) => (
        // A layer is nothing but its place in the stack.
        // biome-ignore lint/suspicious/noArrayIndexKey: the place is the identity
        <Layer key={index} layer={layer} index={index} edit={edit} />
      ))}
    </div>
  );
}

type LayerProps = { layer: CopperLayer; index: number; edit: (change: Edit) => void };

function Layer({ layer, index, edit }: LayerProps) {
  const set = (fields: Partial<CopperLayer>) => edit((document) => setLayer(document, index, fields));
  const label = words.layerNumber(index + 1);
  return (
    <>
      <span className="figure soft">{index + 1}</span>
      <Choice
        bare
        label={`${label}: ${words.kind}`}
        value={layer.kind}
        items={kinds}
        onChange={(kind) => set({ kind })}
      />
      <NumberEntry
        bare
        label={`${label}: ${words.copper}`}
        value={layer.copperUm}
        unit="µm"
        least={0}
        most={1000}
        onChange={(value) => value !== null && set({ copperUm: value })}
      />
      <NumberEntry
        bare
        label={`${label}: ${words.cover}`}
        value={layer.coverPercent ?? USUAL_COVER[layer.kind]}
        unit="%"
        least={0}
        most={100}
        decimals={0}
        onChange={(value) => value !== null && set({ coverPercent: value })}
      />
    </>
  );
}
