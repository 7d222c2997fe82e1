import type { Side } from '../geometry.ts';

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
    solidus: (degrees: string): string => `${degrees} solidus of the neighbours' joints`,
    updating: 'Plan changed, working it out',
  },
  ringLabel: (mm: number): string => `${mm} mm`,
  scaleBar: (mm: number): string => (mm < 1 ? `${Math.round(mm * 1000)} µm` : `${mm} mm`),
  label: 'Board drawing',
  gestures: {
    addSite: 'Mark rework site',
    moveArea: (site: string): string => `Move rework area ${site}`,
    resizeArea: (site: string): string => `Size rework area ${site}`,
    turnArea: (site: string): string => `Turn rework area ${site}`,
    addWatchPoint: 'Place thermocouple',
    moveWatchPoint: (name: string): string => `Move thermocouple ${name}`,
  },
} as const;
