import type { Nozzle, TicketDocument } from '../../../shared-types/plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { stationWords } from '../../../shared-types/words/window/station.ts';
import { setNozzle, setNozzleKind } from '../../editing/station.ts';
import { useApp } from '../../state/use-app.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { LengthEntry } from '../../widgets/UnitEntry.tsx';

const nozzleKinds = (['round', 'rectangular', 'hood', 'infrared'] as const).map((id) => ({
  ...{ id, label: words.nozzleKinds[id] },
}));

/** What blows or shines from above, and how it is held. */
export function NozzleFields({ nozzle }: { nozzle: Nozzle }) {
  const app = useApp();
  const edit = (change: (document: TicketDocument) => TicketDocument) => app.bench.apply(editLabels.station, change);
  const set = (name: string) => (value: number | null) =>
    value !== null && edit((document) => setNozzle(document, { [name]: value }));
  return (
    <>
      <h4 className="sub-head">{stationWords.heater}</h4>
      <Choice
        label={words.nozzle}
        value={nozzle.kind}
        items={nozzleKinds}
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
