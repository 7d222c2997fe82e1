import type { PartState } from '../../shared-types/evaluation.ts';
import { partStateWords } from '../../shared-types/words/window/table.ts';
import './glyphs.css';

export type ShownState = PartState | 'reflow';

const wave = wavyCircle(5.6, 0.9, 8);

/** How a part fares, without colour: thin outline, dashed with '?', double with '!', wavy. */
export function StateMark({ state, size = 16 }: { state: ShownState; size?: number }) {
  return (
    <svg
      className="state-mark"
      width={size}
      height={size}
      viewBox="-8 -8 16 16"
      role="img"
      aria-label={partStateWords[state]}
    >
      {state === 'reflow' ? (
        <path className="line" d={wave} />
      ) : (
        <circle className="line" r="6.500" strokeDasharray={state === 'unsure' ? '2.6 2' : undefined} />
      )}
      {state === 'over' && <circle className="line" r="4.200" strokeWidth="1" />}
      {state !== 'clear' && state !== 'reflow' && <text y="3.200">{state === 'over' ? '!' : '?'}</text>}
    </svg>
  );
}

/** A circle whose radius goes up and down: the outline of a part that will reflow. */
function wavyCircle(radius: number, swing: number, waves: number): string {
  const points = Array.from({ length: 73 }, (_, index) => {
    const angle = (index / 72) * 2 * Math.PI;
    const r = radius + swing * Math.cos(waves * angle);
    return `${(r * Math.cos(angle)).toFixed(2)} ${(r * Math.sin(angle)).toFixed(2)}`;
  });
  return `M${points.join('L')}Z`;
}
