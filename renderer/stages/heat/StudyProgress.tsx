import { ProgressBar } from 'react-aria-components';
import { calibrateWords as words } from '../../../shared-types/words/window/calibrate.ts';
import { cancelStudy } from '../../state/studies.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';

/** How far long work is, and the button that stops it. */
export function StudyProgress({ about, text }: { about: 'calibration' | 'search'; text: string }) {
  const app = useApp();
  const share = useAppState((state) => state.study?.share ?? 0);
  const fit = useAppState((state) => state.study?.fit);
  const { measures } = useUnits();
  return (
    <div className="study-progress">
      <ProgressBar aria-label={text} value={share * 100}>
        <span className="soft">
          {text}
          {fit && `. ${words.fitStands(fit.round, measures.difference(fit.leftK))}`}
        </span>
        <div className="track">
          <div className="filled" style={{ width: `${share * 100}%` }} />
        </div>
      </ProgressBar>
      <Button small onPress={() => cancelStudy(app, about)}>
        {words.cancel}
      </Button>
    </div>
  );
}
