import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import type { Plan } from '../../../../shared-types/plan.ts';
import type { Problem } from '../../../../shared-types/problem.ts';
import type { CalibrationAnswer } from '../../../../shared-types/study.ts';
import { calibrateWords as words } from '../../../../shared-types/words/window/calibrate.ts';
import { frameWords } from '../../../../shared-types/words/window/frame.ts';
import type { AppState } from '../../../state/app-state.ts';
import { wordsOf } from '../../../state/problem-words.ts';
import { cancelStudy, runStudy } from '../../../state/studies.ts';
import { useApp, useAppState, useDocument } from '../../../state/use-app.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Button } from '../../../widgets/Buttons.tsx';
import { Check } from '../../../widgets/Check.tsx';
import { Dialogue } from '../../../widgets/Dialogue.tsx';
import { StudyProgress } from '../StudyProgress.tsx';
import { CalibrationResult } from './CalibrationResult.tsx';
import { type Draft, emptyDraft, orderOf, watchPointsOf, withLog } from './draft.ts';
import { LogSetting } from './LogSetting.tsx';
import { canKeep, takeCalibration } from './take-calibration.ts';
import { useLikelyStart } from './use-likely-start.ts';
import './calibration.css';

type Source = 'none' | 'log' | 'peaks';

/** From a logger's file, or from typed peaks, to a station that knows what it really does. */
export function CalibrateDialog({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const { plan } = useDocument();
  const [source, setSource] = useState<Source>('none');
  const [draft, setDraft] = useState<Draft>(() => emptyDraft(startingRun(app.store.get(), plan)));
  const [answer, setAnswer] = useState<CalibrationAnswer | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const fitting = useAppState((state) => state.study?.about === 'calibration');
  const id = useAppState((state) => state.ticket?.id);
  const read = async (file: File) => {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const log = await app.backend.request('calibration.readLog', { file: { name: file.name, bytes } });
    if (!log.ok) return setProblem(log.problem);
    setProblem(null);
    setDraft((before) => withLog(before, file.name, log.value, plan));
    setSource('log');
  };
  const likelyS = useLikelyStart(draft, (startS) => setDraft((before) => ({ ...before, startS })));
  const wished = orderOf(draft, plan);
  const fitNow = async () => {
    if (!id || !('order' in wished)) return;
    setProblem(null);
    const { order } = wished;
    const found = await runStudy(app, 'calibration', () => app.backend.request('calibration.fit', { id, order }));
    if (found.ok) setAnswer(found.value);
    else if (found.problem.code !== 'cancelled') setProblem(found.problem);
  };
  const close = () => {
    cancelStudy(app, 'calibration');
    onClose();
  };
  const change = (fields: Partial<Draft>) => setDraft((before) => ({ ...before, ...fields }));
  const typePeaks = () => {
    setProblem(null);
    setSource('peaks');
    change({ log: null, columns: [] });
  };
  if (answer) return <Told answer={answer} onBack={() => setAnswer(null)} onClose={close} />;
  const points = watchPointsOf(plan);
  return (
    <Dialogue
      title={words.title}
      size="wide"
      onClose={close}
      footer={
        <Foot
          fitting={fitting}
          missing={source !== 'none' && 'missing' in wished ? wished.missing : null}
          onFit={source !== 'none' && 'order' in wished ? () => void fitNow() : null}
          onClose={close}
        />
      }
    >
      <p>{words.lead}</p>
      {problem && <Trouble problem={problem} />}
      {points.length === 0 ? (
        <p role="alert">{words.noPoints}</p>
      ) : (
        <SourceChoice source={source} draft={draft} onFile={(file) => void read(file)} onPeaks={typePeaks} />
      )}
      {points.length > 0 && source !== 'none' && (
        <LogSetting plan={plan} draft={draft} likelyS={likelyS} change={change} />
      )}
    </Dialogue>
  );
}

type FootProps = { fitting: boolean; missing: string | null; onFit: (() => void) | null; onClose: () => void };

function Foot({ fitting, missing, onFit, onClose }: FootProps) {
  if (fitting) return <StudyProgress about="calibration" text={words.fitting} />;
  return (
    <>
      {missing && <span className="soft why">{missing}</span>}
      <Button onPress={onClose}>{frameWords.cancel}</Button>
      <Button look="primary" disabled={!onFit} onPress={() => onFit?.()}>
        {words.fit}
      </Button>
    </>
  );
}

/** The shown run, else the first. */
const startingRun = ({ view }: AppState, plan: Plan): string =>
  (plan.heatRuns.find(({ id }) => id === view.shownRunId) ?? plan.heatRuns[0])?.id ?? '';

function Trouble({ problem }: { problem: Problem }) {
  const [title, text] = wordsOf(problem);
  return (
    <div role="alert" className="log-trouble">
      <p>{title}</p>
      <p className="soft">{text}</p>
    </div>
  );
}

type SourceProps = { source: Source; draft: Draft; onFile: (file: File) => void; onPeaks: () => void };

function SourceChoice({ source, draft: { log }, onFile, onPeaks }: SourceProps) {
  const { measures } = useUnits();
  return (
    <div className="log-source">
      <FileTrigger onSelect={(files) => files?.[0] && onFile(files[0])}>
        <Button look={source === 'none' ? 'primary' : 'plain'}>{log ? words.otherFile : words.file}</Button>
      </FileTrigger>
      {source !== 'peaks' && <Button onPress={onPeaks}>{words.typed}</Button>}
      <span className="soft">
        {log ? words.fileIs(log.name, log.table.rows, measures.seconds(log.table.seconds)) : words.formats}
      </span>
    </div>
  );
}

type ToldProps = { answer: CalibrationAnswer; onBack: () => void; onClose: () => void };

function Told({ answer, onBack, onClose }: ToldProps) {
  const app = useApp();
  const { plan } = useDocument();
  const { station } = plan;
  const mayKeep = useAppState((state) => canKeep(state.settings.stations, station.name));
  const [keep, setKeep] = useState(true);
  const take = () => {
    takeCalibration(app, answer.calibration, keep && mayKeep);
    onClose();
  };
  return (
    <Dialogue
      title={words.result}
      size="wide"
      onClose={onClose}
      footer={
        <>
          <span className="why">
            {mayKeep ? (
              <Check on={keep} onChange={setKeep}>
                {words.keep(station.name)}
              </Check>
            ) : (
              <span className="soft">{words.unnamed}</span>
            )}
          </span>
          <Button look="quiet" onPress={onBack}>
            {words.back}
          </Button>
          <Button onPress={onClose}>{words.refuse}</Button>
          <Button look="primary" autoFocus onPress={take}>
            {words.take}
          </Button>
        </>
      }
    >
      <CalibrationResult plan={plan} answer={answer} />
    </Dialogue>
  );
}
