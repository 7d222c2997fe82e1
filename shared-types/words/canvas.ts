import type { Side } from '../geometry.ts';
import { type LengthUnit, MM_PER_MIL } from '../units.ts';
import { playbackWords } from './window/playback.ts';

/** Words on and around the board drawing. */
export const canvasWords = {
  /** Upper left of the drawing. */
  lie: (side: Side, turnDeg: number): string => {
    const seen = side === 'top' ? 'Top, seen from above' : 'Bottom, seen from below';
    const turn = ((Math.round(turnDeg) % 360) + 360) % 360;
    return turn === 0 ? seen : `${seen}, turned ${turn}°`;
  },
  legend: {
    worst: 'Peak, worst of all heat runs',
    run: (name: string): string => `Peak in ${name}`,
    moment: (name: string, seconds: number): string => `${name}, ${playbackWords.at(playbackWords.clock(seconds))}`,
    solidus: (degrees: string): string => `${degrees} solidus of the neighbours' joints`,
    updating: 'Plan changed, working it out',
  },
  ringLabel: (mm: number, unit: LengthUnit): string =>
    unit === 'mil' ? `${Math.round(mm / MM_PER_MIL)} mil` : `${mm} mm`,
  /** A round length in its own unit. */
  scaleBar: (length: number, unit: LengthUnit): string => {
    if (unit === 'mil') return `${length} mil`;
    return length < 1 ? `${Math.round(length * 1000)} µm` : `${length} mm`;
  },
  label: 'Board drawing',
  gestures: {
    addSite: 'Mark rework site',
    moveArea: (site: string): string => `Move rework area ${site}`,
    resizeArea: (site: string): string => `Size rework area ${site}`,
    turnArea: (site: string): string => `Turn rework area ${site}`,
    turnHeading: 'Turn the heading of the nozzle',
    addWatchPoint: 'Place thermocouple',
    moveWatchPoint: (name: string): string => `Move thermocouple ${name}`,
  },
} as const;
