import { useEffect, useMemo, useState } from 'react';
import type { CurveSet, JudgedOn } from '../../../shared-types/evaluation.ts';
import type { HeatRun } from '../../../shared-types/plan.ts';
import { playbackWords } from '../../../shared-types/words/window/playback.ts';
import type { AppState } from '../../state/app-state.ts';
import { playableRevision, playedRun, seek } from '../../state/playback.ts';
import { useApp, useAppState } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Segmented } from '../../widgets/Buttons.tsx';
import { Check } from '../../widgets/Check.tsx';
import { Section } from '../../widgets/Section.tsx';
import { CurveChart } from './CurveChart.tsx';
import { type CurveLine, type CurvePicture, curvePicture, lineAt, lineHigh, MOST_PARTS } from './curve-lines.ts';

const words = playbackWords.curves;
const measures = (['joint', 'body', 'skin'] as const).map((id) => ({ id, label: words.measures[id] }));

/** How parts and thermocouples go through the run, against their limits. */
export function CurveSection() {
  const run = useAppState(playedRun);
  const chosen = useAppState((state) => chosenParts(state, run).join('\n'));
  const bySelection = useAppState((state) => state.selection.parts.size > 0);
  const assessment = useAppState((state) => state.evaluation.assessment);
  const [measure, setMeasure] = useState<JudgedOn>('joint');
  const [points, setPoints] = useState(true);
  const [profile, setProfile] = useState(false);
  const curves = useCurves(run, chosen);
  const picture = useMemo(
    () => (curves && run && assessment ? curvePicture(curves, run, assessment, { measure, points, profile }) : null),
    [curves, run, assessment, measure, points, profile],
  );
  if (!run) return null;
  return (
    <Section title={words.title}>
      <Segmented label={words.measure} value={measure} choices={measures} onChange={setMeasure} />
      <div className="shown-toggles">
        <Check on={points} onChange={setPoints}>
          {words.points}
        </Check>
        <Check on={profile} onChange={setProfile}>
          {words.profile}
        </Check>
      </div>
      {picture ? (
        <Curves run={run} picture={picture} stepS={curves?.stepS ?? 1} />
      ) : (
        <p className="empty">{playbackWords.waiting}</p>
      )}
      <p className="soft curve-whose">{curves?.parts.length === 0 ? words.none : words.whose(bySelection)}</p>
    </Section>
  );
}

/** The selected parts, else the targets of the run. */
function chosenParts({ selection, evaluation }: AppState, run: HeatRun | null): string[] {
  if (selection.parts.size > 0) return [...selection.parts].slice(0, MOST_PARTS);
  const found = evaluation.assessment?.evaluation.runs.find((one) => one.runId === run?.id);
  return (found?.targets ?? []).map((target) => target.refdes).slice(0, MOST_PARTS);
}

/** Curves of the newest fine evaluation, asked for when run, parts or figures change; null until they come. */
function useCurves(run: HeatRun | null, chosen: string): CurveSet | null {
  const app = useApp();
  const revision = useAppState(playableRevision);
  const id = useAppState((state) => state.ticket?.id);
  const tagIds = useAppState((state) =>
    (state.ticket?.document.plan.tags ?? []).flatMap((tag) => (tag.kind === 'watchPoint' ? [tag.id] : [])).join('\n'),
  );
  const [curves, setCurves] = useState<CurveSet | null>(null);
  const runId = run?.id;
  useEffect(() => {
    if (revision === null || !id || !runId) return;
    let dropped = false;
    const list = (text: string) => text.split('\n').filter(Boolean);
    const wanted = { id, revision, runId, refdes: list(chosen), tagIds: list(tagIds).slice(0, 50) };
    void app.backend.request('evaluation.curves', wanted).then((answer) => {
      if (answer.ok && !dropped) setCurves(answer.value);
    });
    return () => {
      dropped = true;
    };
  }, [app, id, revision, runId, chosen, tagIds]);
  return curves;
}

function Curves({ run, picture, stepS }: { run: HeatRun; picture: CurvePicture; stepS: number }) {
  const app = useApp();
  const { measures: m } = useUnits();
  const playS = useAppState((state) => state.view.playS);
  const [pointed, setPointed] = useState<number | null>(null);
  const atS = pointed ?? playS;
  const read = (line: CurveLine) => {
    const value = atS === null ? lineHigh(line) : lineAt(line, atS, stepS);
    return Number.isNaN(value) ? '' : m.degrees(value);
  };
  const limits = picture.lines.some((line) => line.limitC !== null);
  const clock = atS === null ? words.peaks : playbackWords.clock(atS);
  const values = picture.lines.map((line) => words.value(line.name, read(line))).join(', ');
  return (
    <>
      <CurveChart
        picture={picture}
        label={words.chart(run.name)}
        said={words.readout(clock, values)}
        atS={atS}
        onTime={setPointed}
        onPick={(seconds) => seek(app.store, seconds)}
      />
      <table className="target-table curve-table">
        <thead>
          <tr>
            <th>{words.name}</th>
            <th>{clock}</th>
            {limits && <th>{words.limit}</th>}
          </tr>
        </thead>
        <tbody>
          {picture.lines.map((line) => (
            <tr key={line.key}>
              <th scope="row">
                <Swatch line={line} /> {line.name}
              </th>
              <td>{read(line)}</td>
              {limits && <td>{line.limitC === null ? '' : m.degrees(line.limitC)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** A piece of the line as it is drawn. */
function Swatch({ line: { style } }: { line: CurveLine }) {
  return (
    <svg className={`swatch ${style.ink}`} width="26" height="8" aria-hidden="true">
      <line x1="0" x2="26" y1="4" y2="4" strokeWidth={style.width} strokeDasharray={style.dash.join(' ')} />
    </svg>
  );
}
