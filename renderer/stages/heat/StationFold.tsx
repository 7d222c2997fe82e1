import { PREHEATERS } from '../../../shared-types/library/preheaters.ts';
import type { Nozzle, Station, TicketDocument } from '../../../shared-types/plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { setNozzle, setNozzleKind, setStation } from '../../editing/station.ts';
import { useApp, useDocument, useTypedEdit } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Segmented } from '../../widgets/Buttons.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { Fold } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { LengthEntry, TemperatureEntry } from '../../widgets/UnitEntry.tsx';
import { PreheaterFields } from './PreheaterFields.tsx';

const nozzleKinds = (['round', 'rectangular', 'hood', 'infrared'] as const).map((id) => ({
  id,
  label: words.nozzleKinds[id],
}));
const readings = (['setting', 'outlet'] as const).map((id) => ({ id, label: words.gasReadings[id] }));
const extractions = (['off', 'low', 'high'] as const).map((id) => ({ id, label: words.extractions[id] }));

/** What stands on the bench: asked in what a technician can read off or measure. */
export function StationFold() {
  const { station } = useDocument().plan;
  const { measures } = useUnits();
  const name = useTypedEdit(
    `${editLabels.station} name`,
    (value) => (document) => setStation(document, { name: value }),
  );
  return (
    <Fold title={words.station} summary={stationSummary(station, measures.length)} open>
      <TextEntry label={words.stationName} value={station.name} longest={200} {...name} />
      <NozzleFields nozzle={station.nozzle} />
      <GasFields station={station} />
      <h4 className="sub-head">{words.preheater}</h4>
      <PreheaterFields preheater={station.preheater} />
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

function NozzleFields({ nozzle }: { nozzle: Nozzle }) {
  const app = useApp();
  const edit = (change: (document: TicketDocument) => TicketDocument) => app.bench.apply(editLabels.station, change);
  const set = (name: string) => (value: number | null) =>
    value !== null && edit((document) => setNozzle(document, { [name]: value }));
  return (
    <>
      <h4 className="sub-head">{words.nozzle}</h4>
      <Segmented
        label={words.nozzle}
        value={nozzle.kind}
        choices={nozzleKinds}
        onChange={(kind) => edit((document) => setNozzleKind(document, kind))}
      />
      {nozzle.kind === 'round' ? (
        <LengthEntry
          label={words.diameter}
          value={nozzle.diameterMm}
          least={0.5}
          most={200}
          onChange={set('diameterMm')}
        />
      ) : (
        <>
          <LengthEntry
            label={words.nozzleLength}
            value={nozzle.lengthMm}
            least={0.5}
            most={200}
            onChange={set('lengthMm')}
          />
          <LengthEntry
            label={words.nozzleWidth}
            value={nozzle.widthMm}
            least={0.5}
            most={200}
            onChange={set('widthMm')}
          />
          <NumberEntry
            label={words.nozzleTurn}
            value={nozzle.turnDeg}
            unit="°"
            least={-360}
            most={360}
            onChange={set('turnDeg')}
          />
        </>
      )}
      <LengthEntry label={words.standOff} value={nozzle.standOffMm} least={0} most={200} onChange={set('standOffMm')} />
      {nozzle.kind === 'hood' && (
        <LengthEntry label={words.rimGap} value={nozzle.rimGapMm} least={0.01} most={50} onChange={set('rimGapMm')} />
      )}
      {'sweepRadiusMm' in nozzle && (
        <LengthEntry
          label={words.sweep}
          value={nozzle.sweepRadiusMm}
          least={0}
          most={100}
          onChange={set('sweepRadiusMm')}
        />
      )}
      {'tiltDeg' in nozzle && <TiltFields nozzle={nozzle} set={set} />}
    </>
  );
}

type Tilted = Extract<Nozzle, { tiltDeg: number }>;
type SetFigure = (name: string) => (value: number | null) => void;

/** How the nozzle leans; where to, once it leans. */
function TiltFields({ nozzle, set }: { nozzle: Tilted; set: SetFigure }) {
  return (
    <>
      <NumberEntry label={words.tilt} value={nozzle.tiltDeg} unit="°" least={0} most={80} onChange={set('tiltDeg')} />
      {nozzle.tiltDeg > 0 && (
        <NumberEntry
          label={words.heading}
          value={nozzle.headingDeg}
          unit="°"
          least={-360}
          most={360}
          onChange={set('headingDeg')}
        />
      )}
    </>
  );
}

function GasFields({ station }: { station: Station }) {
  const app = useApp();
  return (
    <Choice
      label={words.gasReads}
      value={station.gasReads}
      items={readings}
      onChange={(gasReads) => app.bench.apply(editLabels.station, (document) => setStation(document, { gasReads }))}
    />
  );
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
