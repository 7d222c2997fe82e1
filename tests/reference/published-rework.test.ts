import { describe, it } from 'vitest';
import { createSimulation } from '../../main/heat/simulation.ts';
import { upperAt } from '../support/heat/plate.ts';
import { verification } from '../support/verification/record.ts';
import { bareScene, body } from '../unit/main/heat/support.ts';

/**
 * No published table of a whole rework run was found. The one statement with a distance: chip-scale parts under hot air, the
 * nozzle 20 mil (0.5 mm) clear of the part on each side, 'temperature spread of about 130C at a distance of approx 150 mils from the
 * component edge' (an engineer on smtnet, thread 3175, 25 January 1999; board and dwell not told). It bounds the gradient from above.
 */
describe('published statement on a chip-scale part under hot air', () => {
  it('the spread 3.8 mm from the edge is below 130 K, the more copper the less', () => {
    const spread = (inPlane: number) => {
      const scene = bareScene({
        entrainedC: 60,
        board: { ...bareScene().board, inPlane, throughPlane: 0.4 },
        bodies: [body('U1', 0.03, 0.02, { lengthM: 0.01, widthM: 0.01, heightM: 0.001, jointConductance: 2000 })],
        nozzle: {
          mouth: { shape: 'rect', lengthM: 0.011, widthM: 0.011, turnDeg: 0 },
          ...{ standOffM: 0.003, sweepRadiusM: 0, tiltDeg: 0, headingDeg: 0 },
          hood: { filmAt30: 100, rimGapM: 0.001, leak: 0.5 },
        },
        preheater: { xM: 0.03, yM: 0.02, lengthM: 0.06, widthM: 0.04, turnDeg: 0, film: 25, lagS: 40, sensor: null },
        segments: [150, 60].map((seconds, index) => ({
          ...{ name: 'any', seconds, nozzleXM: 0.03, nozzleYM: 0.02, preheaterStartC: 180, preheaterEndC: 180 },
          gas: index === 1 ? { startC: 380, endC: 380, flowStart: 30, flowEnd: 30 } : null,
        })),
      });
      const simulation = createSimulation(scene, 0.0005, 0.25);
      let widest = 0;
      let jointC = 0;
      while (!simulation.advance(1)) {
        const { state } = simulation;
        const middle = Math.floor(state.grid.rows / 2);
        const target = upperAt(state, 0.03, middle);
        jointC = Math.max(jointC, target);
        widest = Math.max(widest, target - upperAt(state, 0.03 + 0.005 + 0.0038, middle));
      }
      return { widest, jointC };
    };
    const verify = verification({
      ...{ topic: 'Published rework measurements', item: 'published-rework' },
      problem: 'Chip-scale part of 10 mm under hot air, 3.8 mm from its edge',
      source:
        'smtnet thread 3175 (1999): about 130 °C of spread; board and dwell not told, so taken as a bound from above',
    });
    const [low, rich] = [spread(2), spread(20)];
    verify.above('hottest under the part, little copper (2 W/mK)', '°C', low!.jointC, 200);
    verify.between('largest spread, little copper', 'K', low!.widest, 36, 130);
    verify.below('largest spread, much copper (20 W/mK)', 'K', rich!.widest, low!.widest);
  });
});
