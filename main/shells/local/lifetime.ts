/** Ends the program when its last window is gone and none came back within the grace period (a reload takes a moment). */
export type Lifetime = {
  /** A window connected; call the answer when it is gone. */
  enter(): () => void;
  stop(): void;
};

export function createLifetime(graceMs: number, end: () => void): Lifetime {
  let windows = 0;
  let timer: NodeJS.Timeout | null = null;
  const stop = () => {
    if (timer) clearTimeout(timer);
    timer = null;
  };
  return {
    enter() {
      windows += 1;
      stop();
      let gone = false;
      return () => {
        if (gone) return;
        gone = true;
        windows -= 1;
        if (windows === 0) timer = setTimeout(end, graceMs);
      };
    },
    stop,
  };
}
