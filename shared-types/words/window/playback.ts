/** Words of the time scrubber and the curves. */
export const playbackWords = {
  scrubber: 'Time in the heat run',
  play: 'Play the heat run',
  pause: 'Pause',
  rest: 'Worst over time',
  at: (clock: string): string => `at ${clock}`,
  of: (clock: string): string => `of ${clock}`,
  place: (clock: string, segment: string): string => `${clock}, ${segment}`,
  resting: 'worst over time',
  waiting: 'Plays once the fine map is there.',
  gas: 'gas',
  below: 'preheater',
  /** Minutes and seconds from the run's start. */
  clock: (seconds: number): string => {
    const whole = Math.round(seconds);
    return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
  },
  curves: {
    title: 'Curves',
    measure: 'Read on',
    measures: { joint: 'Joints', body: 'Body', skin: 'Skin' },
    points: 'Thermocouples',
    profile: 'Profile',
    whose: (selected: boolean): string => (selected ? 'The selected parts.' : 'The targets; select parts for theirs.'),
    none: 'Nothing of the selection was on the board in this run.',
    chart: (run: string): string => `Curves of ${run}: left and right arrow keys move the time`,
    peaks: 'Peak',
    limit: 'Limit',
    name: 'Curve',
    coldest: (name: string): string => `${name} coldest`,
    hottest: (name: string): string => `${name} hottest`,
    source: 'Preheater',
    gas: 'Gas set',
    site: 'Board at the site',
    liquidus: 'liquidus',
    limitOf: (names: string): string => `${names} limit`,
    readout: (clock: string, values: string): string => `At ${clock}: ${values}`,
    value: (name: string, value: string): string => `${name} ${value}`,
  },
} as const;
