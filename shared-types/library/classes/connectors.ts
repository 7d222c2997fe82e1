import type { ClassLimit, PartClass } from '../library-types.ts';
import { assumption, found, J_STD_075, memory } from '../sources.ts';
import { define, limit } from './define.ts';

type Plastic = [id: string, name: string, skin: ClassLimit, reflowRated: boolean];

/**
 * Connectors by plastic, judged on the skin. A melting point or heat deflection temperature alone does not tell what
 * a moulding stands (Samtec, 1997): figures below are ends of published ranges, the data sheet wins.
 */
const PLASTICS: Plastic[] = [
  ['lcp', 'LCP', limit(260, { ...J_STD_075, text: `${J_STD_075.text}; LCP melts at 280-335 °C, from memory` }), true],
  [
    'pa46',
    'PA46',
    limit(260, found('J-STD-075 base reflow 260 °C; PA46 melts at 290-295 °C (NETZSCH polymer table)', 'M')),
    true,
  ],
  ['pct', 'PCT', limit(255, found('PCT melts at 290 °C, deflects at about 260 °C (trade press); 5 K kept', 'M')), true],
  ['pa6t', 'PA6T or PA9T', limit(260, memory('PA6T/PA9T melt at 295-320 °C, reflow-rated at 260 °C')), true],
  ['pbt', 'PBT', limit(200, found('PBT, glass-filled, deflects at 200-220 °C (0.45 MPa), melts at 225 °C')), false],
  [
    'pa66-gf',
    'PA66, glass-filled',
    limit(240, memory('PA66 melts at 255-265 °C, glass-filled deflects at about 250 °C; 10 K kept')),
    false,
  ],
  [
    'pa66',
    'PA66, unfilled or filling not known',
    limit(
      180,
      assumption('PA66 melts at 255-265 °C but softens long before (70 °C at 1.8 MPa): 180 °C is our assumption'),
    ),
    false,
  ],
  [
    'unknown',
    'plastic not known',
    limit(200, assumption('Plastic not known: the lower end of PBT (deflects at 200-220 °C) is taken')),
    false,
  ],
];

export const CONNECTOR_CLASSES: readonly PartClass[] = PLASTICS.map(([id, name, skin, reflowRated]) =>
  define({
    id: `connector-${id}`,
    name: `Connector, ${name}`,
    mark: 'J',
    heightMm: 4,
    material: 'plastic',
    joint: 'connector',
    skin,
    reflowRated,
  }),
);
