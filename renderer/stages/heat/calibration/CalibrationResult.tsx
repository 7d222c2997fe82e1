import { useMemo, useState } from 'react';
import type { Plan } from '../../../../shared-types/plan.ts';
import { isHandHeld } from '../../../../shared-types/rules/hand-held.ts';
import type { CalibrationAnswer } from '../../../../shared-types/study.ts';
import { calibrateWords as words } from '../../../../shared-types/words/window/calibrate.ts';
import { useUnits } from '../../../state/use-units.ts';
import { Segmented } from '../../../widgets/Buttons.tsx';
import type { CurveStyle } from '../curve-lines.ts';
import { watchPointsOf } from './draft.ts';
import { type ChartLine, LineChart } from './LineChart.tsx';
import { TermTable } from './TermTable.tsx';

/** More than this between log and fitted model is said to be a lot, K. */
const MUCH_K = 6;

/** What the log told: terms against what was believed before, and the curves of each bead. */
export function CalibrationResult({ plan, answer }: { plan: Plan; answer: CalibrationAnswer }) {
  const { measures } = useUnits();
  const { readings, leftK } = answer.calibration;
  return (
    <>
      <p>{words.leftover(readings, measures.difference(leftK))}</p>
      {leftK > MUCH_K && (
        <p role="alert" className="log-trouble">
          {words.muchLeft}
        </p>
      )}
      <TermTable terms={answer.terms} />
      <Curves plan={plan} answer={answer} />
      {isHandHeld(plan) && <p className="soft">{words.handNote}</p>}
    </>
  );
}

const STYLES: Record<keyof typeof words.legend, CurveStyle> = {
  read: { ink: 'ink', width: 2, dash: [] },
  before: { ink: 'soft', width: 1.25, dash: [2, 3] },
  after: { ink: 'accent', width: 1.75, dash: [7, 3] },
};
const LINES = ['read', 'before', 'after'] as const;

function Curves({ plan, answer: { curves, peaks, residuals } }: { plan: Plan; answer: CalibrationAnswer }) {
  const { measures: m } = useUnits();
  const names = new Map(watchPointsOf(plan).map(({ id, name }) => [id, name]));
  const nameOf = (tagId: string) => names.get(tagId) ?? tagId;
  const [chosen, setChosen] = useState(curves[0]?.tagId ?? '');
  const curve = curves.find(({ tagId }) => tagId === chosen);
  const lines = useMemo(
    (): ChartLine[] =>
      curve
        ? LINES.map((name) => ({
            ...{ name: words.legend[name], seconds: curve.atS, celsius: curve[name], style: STYLES[name] },
          }))
        : [],
    [curve],
  );
  const left = residuals.find(({ tagId }) => tagId === chosen);
  return (
    <section className="bead-curves">
      <h3>{words.curves}</h3>
      {curve && (
        <>
          <Segmented
            label={words.bead}
            value={chosen}
            choices={curves.map(({ tagId }) => ({ id: tagId, label: nameOf(tagId) }))}
            onChange={setChosen}
          />
          {left && (
            <p className="soft">
              {words.beadLeft(
                m.difference(left.rmsK),
                m.difference(left.worstK),
                m.difference(left.biasK),
                left.biasK >= 0,
              )}
            </p>
          )}
          <LineChart label={words.curveChart(nameOf(chosen))} lines={lines} />
          <p className="bead-legend soft">
            {LINES.map((name) => (
              <span key={name}>
                <svg className={`swatch ${STYLES[name].ink}`} width="26" height="8" aria-hidden="true">
                  <line
                    x1="0"
                    x2="26"
                    y1="4"
                    y2="4"
                    strokeWidth={STYLES[name].width}
                    strokeDasharray={STYLES[name].dash.join(' ')}
                  />
                </svg>
                {words.legend[name]}
              </span>
            ))}
          </p>
        </>
      )}
      {peaks.map(({ tagId, read, before, after }) => (
        <p key={tagId}>{words.peakRead(nameOf(tagId), m.temperature(read), m.degrees(before), m.degrees(after))}</p>
      ))}
    </section>
  );
}
