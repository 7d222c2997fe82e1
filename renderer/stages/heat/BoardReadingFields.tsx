import { useState } from 'react';
import { preheaterById } from '../../../shared-types/library/preheaters.ts';
import type { Station } from '../../../shared-types/plan.ts';
import type { PreheaterFit } from '../../../shared-types/station-fit.ts';
import { rounded } from '../../../shared-types/words/measures.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { stationWords as words } from '../../../shared-types/words/window/station.ts';
import { setPreheaterFit, setStation } from '../../editing/station.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { TemperatureEntry } from '../../widgets/UnitEntry.tsx';

type Given = NonNullable<Station['boardReadings']>;

/** When the board is read after switch-on, s. */
const TIMES_S = [60, 120, 240];
const USUAL_SOURCE_C = 300;
const MUCH_K = 8;

/** Readings of the board over the preheater, and film and lag fitted to them; those two are never asked for. */
export function BoardReadingFields({ station }: { station: Station }) {
  const app = useApp();
  const { boardReadings: given, preheater } = station;
  const set = (boardReadings: Station['boardReadings']) =>
    app.bench.apply(editLabels.station, (document) => setStation(document, { boardReadings }));
  const isFitted = preheater.filmWm2K !== undefined || preheater.lagS !== undefined;
  const kind = preheaterById(preheater.kind).name.toLowerCase();
  return (
    <>
      <p className="empty">{isFitted ? words.measured : words.usual(kind)}</p>
      <div className="station-acts">
        {!given && (
          <Button small onPress={() => set({ sourceC: USUAL_SOURCE_C, readings: [] })}>
            {words.readBoard}
          </Button>
        )}
        {isFitted && (
          <Button
            look="quiet"
            small
            onPress={() => app.bench.apply(editLabels.station, (document) => setPreheaterFit(document, null))}
          >
            {words.toUsual}
          </Button>
        )}
      </div>
      {given && <Readings given={given} set={set} />}
    </>
  );
}

function Readings({ given, set }: { given: Given; set: (next: Given | null) => void }) {
  const app = useApp();
  const id = useAppState((state) => state.ticket?.id);
  const [fit, setFit] = useState<PreheaterFit | null>(null);
  const put = (next: Given | null) => {
    setFit(null);
    set(next);
  };
  const read = (atS: number, boardC: number | null) => {
    const others = given.readings.filter((one) => one.atS !== atS);
    const readings = boardC === null ? others : [...others, { atS, boardC }].sort((a, b) => a.atS - b.atS);
    put({ ...given, readings });
  };
  const fitNow = async () => {
    if (!id) return;
    const answer = await app.backend.request('preheater.fit', { id, boardReadings: given });
    if (!answer.ok) return app.tickets.tell(answer.problem);
    setFit(answer.value);
    app.bench.apply(editLabels.station, (document) => setPreheaterFit(document, answer.value));
  };
  return (
    <>
      <h4 className="sub-head">{words.boardReadings}</h4>
      <p className="empty">{words.boardHow}</p>
      <TemperatureEntry
        label={words.source}
        value={given.sourceC}
        least={30}
        most={1000}
        onChange={(sourceC) => sourceC !== null && put({ ...given, sourceC })}
      />
      {TIMES_S.map((atS) => (
        <TemperatureEntry
          key={atS}
          label={words.boardAt(atS)}
          value={given.readings.find((one) => one.atS === atS)?.boardC ?? null}
          least={-40}
          most={500}
          emptyIs="–"
          onChange={(boardC) => read(atS, boardC)}
        />
      ))}
      <div className="station-acts">
        <Button small disabled={given.readings.length === 0} onPress={() => void fitNow()}>
          {words.fit}
        </Button>
        <Button look="quiet" small onPress={() => put(null)}>
          {words.dropBoard}
        </Button>
      </div>
      {fit && <FitSaid fit={fit} />}
    </>
  );
}

function FitSaid({ fit }: { fit: PreheaterFit }) {
  const { measures: m } = useUnits();
  return (
    <div role="status">
      <p>{words.fitted(rounded(fit.filmWm2K), rounded(fit.lagS))}</p>
      <p>{words.sure(Math.exp(fit.filmSigma).toFixed(2))}</p>
      {fit.readings.map(({ atS, boardC, fittedC }) => (
        <p key={atS} className="soft">
          {words.residuals(rounded(atS), m.degrees(boardC), m.temperature(fittedC))}
        </p>
      ))}
      <p className="soft">{words.residual(m.difference(fit.residualK))}</p>
      {fit.residualK > MUCH_K && <p>{words.farOff}</p>}
    </div>
  );
}
