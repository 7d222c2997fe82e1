import { OF_STATION } from '../../../shared-types/rules/station-terms.ts';
import { BAND_90 } from '../../../shared-types/uncertainty.ts';
import { calibrationWords as words } from '../../../shared-types/words/calibration.ts';
import { calibrateWords } from '../../../shared-types/words/window/calibrate.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { setStation } from '../../editing/station.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';

/** What a logged run told of the station, and the way to log one. */
export function CalibrationSection() {
  const app = useApp();
  const { heatRuns, station } = useDocument().plan;
  const { calibration } = station;
  const forget = () =>
    app.bench.apply(editLabels.forgetCalibration, (document) => setStation(document, { calibration: null }));
  return (
    <Section title={words.title}>
      {calibration ? <Found /> : <p className="empty">{calibrateWords.none}</p>}
      <div className="station-acts">
        <Button
          small
          disabled={heatRuns.length === 0}
          onPress={() => app.store.set((state) => ({ ...state, dialog: 'calibrate' }))}
        >
          {calibration ? calibrateWords.again : calibrateWords.open}
        </Button>
        {calibration && (
          <Button look="quiet" small onPress={forget}>
            {words.forget}
          </Button>
        )}
      </div>
    </Section>
  );
}

function Found() {
  const { measures } = useUnits();
  const { board, plan } = useDocument();
  const { calibration } = plan.station;
  if (!calibration) return null;
  const isHere = calibration.board === board.name;
  const shown = calibration.terms.filter(({ id }) => isHere || OF_STATION.has(id));
  return (
    <>
      <p>{words.madeOn(calibration.log, calibration.board, measures.difference(calibration.leftK))}</p>
      {!isHere && <p className="soft">{words.stationOnly}</p>}
      <dl className="found-terms">
        {shown.map(({ id, step, sigma }) => (
          <div key={id}>
            <dt>{words.term(id)}</dt>
            <dd className="figure">
              {words.found(id, step)} <span className="soft">{words.spread(id, BAND_90 * sigma)}</span>
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}
