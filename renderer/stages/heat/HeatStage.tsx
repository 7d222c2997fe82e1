import { heatWords as words } from '../../../shared-types/words/window/heat.ts';
import { useDocument } from '../../state/use-app.ts';
import { FindingSection } from '../plan/FindingSection.tsx';
import { CalibrationSection } from './CalibrationSection.tsx';
import { CurveSection } from './CurveSection.tsx';
import { ReadingSection } from './ReadingSection.tsx';
import { RunSection } from './RunSection.tsx';
import { ShownSection } from './ShownSection.tsx';
import { StationFold } from './StationFold.tsx';
import { SearchSection } from './search/SearchSection.tsx';
import { TargetSection } from './TargetSection.tsx';
import '../stages.css';
import './heat.css';

/** What the heat does, and with what it is done. */
export function HeatStage() {
  const hasRuns = useDocument().plan.heatRuns.length > 0;
  return (
    <>
      {hasRuns ? (
        <>
          <ShownSection />
          <TargetSection />
          <CurveSection />
          <RunSection />
          <ReadingSection />
        </>
      ) : (
        <p className="stage-lead">{words.noRuns}</p>
      )}
      <StationFold />
      <CalibrationSection />
      {hasRuns && <SearchSection />}
      <FindingSection />
    </>
  );
}
