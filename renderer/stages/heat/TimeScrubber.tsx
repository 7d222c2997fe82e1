import { Pause, Play } from 'lucide-react';
import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from 'react';
import type { HeatRun } from '../../../shared-types/plan.ts';
import type { Segment } from '../../../shared-types/profile.ts';
import { heatWords } from '../../../shared-types/words/window/heat.ts';
import { playbackWords as words } from '../../../shared-types/words/window/playback.ts';
import { followPlayback, playableRevision, playedRun, runSeconds, seek, togglePlaying } from '../../state/playback.ts';
import { useApp, useAppState, useDocument } from '../../state/use-app.ts';
import { Button, IconButton } from '../../widgets/Buttons.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import './scrubber.css';

const WORST = 'worst';

/** Along the foot of the canvas while Heat is open: the heat run as it goes by, and the worst over time as its rest. */
export function TimeScrubber() {
  const app = useApp();
  const shown = useAppState((state) => state.view.stage === 'heat' && playedRun(state) !== null);
  useEffect(() => (shown ? followPlayback(app.store, app.backend) : undefined), [app, shown]);
  useEffect(() => {
    if (!shown) seek(app.store, null);
  }, [app, shown]);
  return shown ? <Bar /> : null;
}

function Bar() {
  const app = useApp();
  const run = useAppState(playedRun);
  const { playS, playing, shownRunId } = useAppState(({ view }) => ({
    ...{ playS: view.playS, playing: view.playing, shownRunId: view.shownRunId },
  }));
  const playable = useAppState((state) => playableRevision(state) !== null);
  const { heatRuns } = useDocument().plan;
  if (!run) return null;
  const items = [{ id: WORST, label: heatWords.worst }, ...heatRuns.map(({ id, name }) => ({ id, label: name }))];
  return (
    <section className="scrubber" aria-label={words.scrubber}>
      <IconButton
        icon={playing ? Pause : Play}
        label={playing ? words.pause : words.play}
        keys="Y"
        small
        disabled={!playable}
        onPress={() => togglePlaying(app.store)}
      />
      <div className="scrubber-run">
        <Choice
          bare
          label={heatWords.run}
          value={shownRunId === run.id ? run.id : WORST}
          items={items}
          onChange={(id) => {
            seek(app.store, null);
            app.setView({ shownRunId: id === WORST ? null : id });
          }}
        />
      </div>
      <Track run={run} playS={playS} />
      <span className="scrubber-clock" title={playable ? undefined : words.waiting}>
        {playS === null ? words.resting : `${words.clock(playS)} ${words.of(words.clock(runSeconds(run)))}`}
      </span>
      {playS !== null && (
        <Button look="quiet" small onPress={() => seek(app.store, null)}>
          {words.rest}
        </Button>
      )}
    </section>
  );
}

/** Time of a key press on the track, s; undefined: not a key of the track. null: back to rest. */
function timeOfKey(event: KeyboardEvent, at: number, seconds: number): number | null | undefined {
  const step = event.shiftKey ? 10 : 1;
  const moved: Record<string, number | null> = {
    ArrowLeft: at - step,
    ArrowDown: at - step,
    ArrowRight: at + step,
    ArrowUp: at + step,
    PageDown: at - 30,
    PageUp: at + 30,
    Home: 0,
    End: seconds,
    Escape: null,
  };
  return moved[event.key];
}

function Track({ run, playS }: { run: HeatRun; playS: number | null }) {
  const app = useApp();
  const element = useRef<HTMLDivElement>(null);
  const dragging = useRef(false);
  const seconds = runSeconds(run);
  const stretches = stretchesOf(run.segments);
  const here = stretches.findLast((one) => one.fromS <= (playS ?? 0));
  const go = (event: PointerEvent) => {
    const box = element.current?.getBoundingClientRect();
    if (!box) return;
    app.setView({ playing: false });
    seek(app.store, ((event.clientX - box.left) / box.width) * seconds);
  };
  return (
    <div
      ref={element}
      className="scrubber-track"
      role="slider"
      tabIndex={0}
      aria-label={words.scrubber}
      aria-valuemin={0}
      aria-valuemax={seconds}
      aria-valuenow={playS ?? seconds}
      aria-valuetext={playS === null ? words.resting : words.place(words.clock(playS), here?.name ?? '')}
      onKeyDown={(event) => {
        const next = timeOfKey(event, playS ?? 0, seconds);
        if (next === undefined) return;
        event.preventDefault();
        app.setView({ playing: false });
        seek(app.store, next);
      }}
      onPointerDown={(event) => {
        dragging.current = true;
        event.currentTarget.setPointerCapture(event.pointerId);
        go(event);
      }}
      onPointerMove={(event) => dragging.current && go(event)}
      onPointerUp={() => {
        dragging.current = false;
      }}
      onPointerCancel={() => {
        dragging.current = false;
      }}
    >
      {stretches.map((one) => (
        <span
          key={one.fromS}
          className="stretch"
          data-gas={one.gas || undefined}
          data-below={one.below || undefined}
          title={one.title}
          style={{ left: `${(one.fromS / seconds) * 100}%`, width: `${(one.seconds / seconds) * 100}%` }}
        >
          {one.name}
        </span>
      ))}
      {playS !== null && <span className="thumb" style={{ left: `${(playS / seconds) * 100}%` }} />}
    </div>
  );
}

/** Below this a preheater does not heat, C. */
const BARELY_WARM_C = 60;

function stretchesOf(segments: readonly Segment[]) {
  let fromS = 0;
  return segments.map((segment) => {
    const { name, seconds } = segment;
    const below = Math.max(segment.preheater.startC, segment.preheater.endC) > BARELY_WARM_C;
    const what = [...(segment.gas ? [words.gas] : []), ...(below ? [words.below] : [])];
    const stretch = { name, seconds, fromS, gas: segment.gas !== null, below };
    fromS += seconds;
    return { ...stretch, title: [name, words.clock(stretch.fromS), ...what].join(', ') };
  });
}
