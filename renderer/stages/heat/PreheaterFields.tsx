import { boxOf } from '../../../shared-types/geometry.ts';
import { PREHEATERS } from '../../../shared-types/library/preheaters.ts';
import type { Preheater } from '../../../shared-types/plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { setPreheater } from '../../editing/station.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { LengthEntry, TemperatureEntry } from '../../widgets/UnitEntry.tsx';

const kinds = PREHEATERS.map((kind) => ({ id: kind.id, label: kind.name }));
const places = [
  { id: 'centred', label: words.zoneCentred },
  { id: 'placed', label: words.zonePlaced },
] as const;
const sensors = [
  { id: 'none', label: words.sensorNone },
  { id: 'placed', label: words.sensorAt },
] as const;

export function PreheaterFields({ preheater }: { preheater: Preheater }) {
  const app = useApp();
  const { outline } = useDocument().board;
  const set = (fields: Partial<Preheater>) =>
    app.bench.apply(editLabels.station, (document) => setPreheater(document, fields));
  const box = boxOf(outline);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return (
    <>
      <Choice label={words.preheater} value={preheater.kind} items={kinds} onChange={(kind) => set({ kind })} />
      <LengthEntry
        label={words.zoneLength}
        value={preheater.lengthMm}
        least={1}
        most={2000}
        onChange={(value) => value && set({ lengthMm: value })}
      />
      <LengthEntry
        label={words.zoneWidth}
        value={preheater.widthMm}
        least={1}
        most={2000}
        onChange={(value) => value && set({ widthMm: value })}
      />
      <Choice
        label={words.zoneCentre}
        value={preheater.centre ? 'placed' : 'centred'}
        items={places}
        onChange={(place) => set({ centre: place === 'placed' ? middle : null })}
      />
      {preheater.centre && <PointFields at={preheater.centre} onChange={(centre) => set({ centre })} />}
      <TemperatureEntry
        label={words.largest}
        value={preheater.largestC}
        least={0}
        most={1200}
        onChange={(value) => value !== null && set({ largestC: value })}
      />
      <Choice
        label={words.sensor}
        value={preheater.sensor ? 'placed' : 'none'}
        items={sensors}
        onChange={(place) => set({ sensor: place === 'placed' ? middle : null })}
      />
      {preheater.sensor && <PointFields at={preheater.sensor} onChange={(sensor) => set({ sensor })} />}
    </>
  );
}

type Place = { x: number; y: number };

function PointFields({ at, onChange }: { at: Place; onChange: (at: Place) => void }) {
  return (
    <>
      <LengthEntry label={words.x} value={at.x} onChange={(x) => x !== null && onChange({ ...at, x })} />
      <LengthEntry label={words.y} value={at.y} onChange={(y) => y !== null && onChange({ ...at, y })} />
    </>
  );
}
