import { PREHEATERS } from '../../../shared-types/library/preheaters.ts';
import type { Station } from '../../../shared-types/plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { stationWords } from '../../../shared-types/words/window/station.ts';
import { setStation } from '../../editing/station.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { Fold } from '../../widgets/Section.tsx';
import { TemperatureEntry } from '../../widgets/UnitEntry.tsx';
import { BoardReadingFields } from './BoardReadingFields.tsx';
import { GasFields } from './GasFields.tsx';
import { NozzleFields } from './NozzleFields.tsx';
import { PreheaterFields } from './PreheaterFields.tsx';
import { StationChoice } from './StationChoice.tsx';

const extractions = (['off', 'low', 'high'] as const).map((id) => ({ id, label: words.extractions[id] }));

/** What stands on the bench: asked in what a technician can read off or measure. */
export function StationFold() {
  const { station } = useDocument().plan;
  const { measures } = useUnits();
  return (
    <Fold title={words.station} summary={stationSummary(station, measures.length)} open>
      <StationChoice station={station} />
      <NozzleFields nozzle={station.nozzle} />
      {station.nozzle.kind !== 'infrared' && <GasFields station={station} />}
      <h4 className="sub-head">{words.preheater}</h4>
      <PreheaterFields preheater={station.preheater} />
      <BoardReadingFields station={station} />
      <h4 className="sub-head">{stationWords.room}</h4>
      <RoomFields station={station} />
    </Fold>
  );
}

function stationSummary({ nozzle, preheater }: Station, length: (mm: number) => string): string {
  const size =
    nozzle.kind === 'round' ? length(nozzle.diameterMm) : `${length(nozzle.lengthMm)} × ${length(nozzle.widthMm)}`;
  const below = PREHEATERS.find((kind) => kind.id === preheater.kind)?.name.toLowerCase();
  return `${words.nozzleKinds[nozzle.kind].toLowerCase()} ${size}, ${below}`;
}

function RoomFields({ station }: { station: Station }) {
  const app = useApp();
  const set = (fields: Partial<Omit<Station, 'nozzle' | 'preheater'>>) =>
    app.bench.apply(editLabels.station, (document) => setStation(document, fields));
  return (
    <>
      <TemperatureEntry
        label={words.room}
        value={station.roomC}
        least={-40}
        most={60}
        onChange={(value) => value !== null && set({ roomC: value })}
      />
      <Choice
        label={words.extraction}
        value={station.fumeExtraction}
        items={extractions}
        onChange={(fumeExtraction) => set({ fumeExtraction })}
      />
    </>
  );
}
