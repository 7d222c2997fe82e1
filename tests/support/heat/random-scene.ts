import type { HeatScene, SceneBody, SceneNozzle, SceneOverlay, SceneSegment } from '../../../main/heat/scene.ts';
import { uniforms } from './random.ts';

/** Scenes of every kind that the model knows, from a seed: odd and even grids, one row, holes, cans over chips, gels, hoods, emitters. */
export function randomScene(seed: number): HeatScene {
  const uniform = uniforms(seed);
  const between = (least: number, most: number) => least + uniform() * (most - least);
  const often = (share: number) => uniform() < share;
  const widthM = Math.round(between(4, 40)) * 0.001;
  const heightM = often(0.1) ? 0.001 : Math.round(between(2, 30)) * 0.001;
  const overlay = (): SceneOverlay => ({
    ...{ arealHeat: between(200, 2000), wetConductance: 800, dryConductance: between(20, 800) },
    waterKgM2: often(0.5) ? between(0.01, 0.2) : 0,
  });
  const bodyAt = (index: number): SceneBody => {
    const metal = often(0.15);
    const shape = metal ? (often(0.6) ? 'can' : 'frame') : often(0.2) ? 'round' : 'rect';
    return {
      ...{ id: `B${index}`, side: often(0.6) ? 'top' : 'bottom', shape, metal },
      ...{ xM: between(-0.001, widthM + 0.001), yM: between(-0.001, heightM + 0.001) },
      ...{ lengthM: between(0.0005, 0.012), widthM: between(0.0005, 0.009), turnDeg: often(0.4) ? between(0, 180) : 0 },
      ...{ wallM: 0.0008, heightM: between(0.0003, 0.006), jointConductance: between(200, 30000) },
      ...{ gapConductance: 14, volumetricHeat: between(1e6, 3e6), conductivity: between(0.3, 100) },
      emissivity: often(0.3) ? 0.1 : 0.9,
      ...{ shieldResistance: often(0.2) ? between(1e-4, 0.02) : 0, shieldArealHeat: often(0.2) ? 150 : 0 },
      overlay: often(0.15) ? overlay() : null,
      trialShield: often(0.7)
        ? { resistance: between(0.001, 0.03), arealHeat: between(50, 400), emissivity: 0.1 }
        : null,
    };
  };
  const nozzle: SceneNozzle = {
    mouth: often(0.5)
      ? { shape: 'round', diameterM: between(0.003, 0.02) }
      : { shape: 'rect', lengthM: between(0.004, 0.02), widthM: between(0.004, 0.02), turnDeg: between(0, 90) },
    ...{ standOffM: between(0.004, 0.03), sweepRadiusM: often(0.4) ? 0.005 : 0 },
    ...{ tiltDeg: often(0.3) ? 15 : 0, headingDeg: between(0, 360) },
    hood: often(0.2) ? { filmAt30: 100, rimGapM: 0.001, leak: 0.8 } : null,
    infrared: often(0.25) ? { emissivity: 0.9 } : null,
  };
  const segment = (seconds: number, isBlown: boolean): SceneSegment => ({
    ...{ name: '', seconds, preheaterStartC: between(25, 200), preheaterEndC: between(100, 350) },
    gas: isBlown
      ? { startC: between(80, 300), endC: between(200, 450), flowStart: between(5, 60), flowEnd: between(5, 60) }
      : null,
    ...{ nozzleXM: between(0, widthM), nozzleYM: between(0, heightM) },
  });
  const corner = (x: number, y: number) => [x * widthM, y * heightM] as const;
  return {
    ...{ roomC: between(15, 30), entrainedC: between(25, 70), workedSide: often(0.7) ? 'top' : 'bottom' },
    ...{ fumeFilm: often(0.3) ? 3 : 0, idleFactor: between(0.8, 1.2) },
    board: {
      outlines: [[corner(0, 0), corner(1, 0), corner(1, often(0.5) ? 1 : 0.7), corner(0, 1)]],
      cutouts: often(0.4) ? [[corner(0.3, 0.3), corner(0.6, 0.3), corner(0.6, 0.5), corner(0.3, 0.5)]] : [],
      ...{ thicknessM: between(0.0006, 0.003), volumetricHeat: 2.2e6, inPlane: between(1, 60) },
      ...{ throughPlane: between(0.3, 1), emissivity: 0.9 },
    },
    bodies: Array.from({ length: Math.floor(between(0, 24)) }, (_, index) => bodyAt(index)),
    nozzle,
    preheater: often(0.8)
      ? {
          ...{ xM: between(0, widthM), yM: between(0, heightM), lengthM: between(0.005, 0.05), widthM: 0.02 },
          ...{ turnDeg: between(0, 90), film: between(15, 40), lagS: between(5, 120) },
          sensor: often(0.4) ? { xM: 0.2 * widthM, yM: 0.2 * heightM, sourceMaxC: 380 } : null,
        }
      : null,
    segments: [segment(between(3, 8), false), segment(between(4, 9), true), segment(5, true), segment(4, false)],
  };
}
