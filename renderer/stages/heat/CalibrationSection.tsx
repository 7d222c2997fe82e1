import { calibrationWords as words } from '../../../shared-types/words/calibration.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { setStation } from '../../editing/station.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';

/** What a logged run told of the station; nothing where none was logged. */
export function CalibrationSection() {
  const app = useApp();
  const { measures } = useUnits();
  const { board, plan } = useDocument();
  const { calibration } = plan.station;
  if (!calibration) return null;
  const forget = () =>
    app.bench.apply(editLabels.forgetCalibration, (document) => setStation(document, { calibration: null }));
  return (
    <Section
      title={words.title}
      action={
        <Button small onPress={forget}>
          {words.forget}
        </Button>
      }
    >
      <p>{words.madeOn(calibration.log, calibration.board, measures.difference(calibration.leftK))}</p>
      {calibration.board !== board.name && <p className="soft">{words.stationOnly}</p>}
      <dl className="lines">
        {calibration.terms.map(({ id, step, sigma }) => (
          <div key={id} style={{ display: 'contents' }}>
            <dt>{words.term(id)}</dt>
            <dd className="figure">
              {words.found(id, step)} <span className="soft">{words.spread(id, sigma)}</span>
            </dd>
          </div>
        ))}
      </dl>
    </Section>
  );
}
