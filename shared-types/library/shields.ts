import type { Shield, ShieldLayer } from './library-types.ts';
import { assumption, found } from './sources.ts';

/**
 * Conductivity of still air at 150 C, W/mK, from the air formula of the heat model:
 * 2.64638e-3 T^1.5 / (T + 245.4 x 10^(-12/T)) at T = 423.15 K.
 */
export const GAP_AIR_WMK = 0.0353;

const tape: ShieldLayer[] = [
  // 25 um film (k 0.12) on 38 um silicone adhesive (k 0.2); 1.55 MJ/m3K. Typical maker figures, from memory.
  {
    kind: 'solid',
    name: 'Polyimide film',
    thicknessMm: 0.025,
    conductivityWmK: 0.12,
    arealMassJm2K: 39,
    polishedOutside: false,
  },
  {
    kind: 'solid',
    name: 'Silicone adhesive',
    thicknessMm: 0.038,
    conductivityWmK: 0.2,
    arealMassJm2K: 59,
    polishedOutside: false,
  },
];

const foil: ShieldLayer = {
  kind: 'solid',
  name: 'Aluminium foil, bright side out',
  thicknessMm: 0.05,
  conductivityWmK: 200,
  arealMassJm2K: 121,
  polishedOutside: true,
};

const fibre: ShieldLayer = {
  kind: 'solid',
  name: 'Ceramic fibre blanket',
  thicknessMm: 3,
  conductivityWmK: 0.08,
  arealMassJm2K: 400,
  polishedOutside: false,
};

const gap = (gapMm: number): ShieldLayer => ({ kind: 'air-gap', gapMm });

const TAPE_SOURCE = found(
  'Polyimide tape barely insulates: 1 °C less in an oven (IPC TechNet, 2007); least effective of the materials compared (SMT Magazine, April 2015)',
);
const METAL_CAUTION =
  'Conducts: keep off live pads, cells and bare joints. Does nothing against heat through the board.';

/** Shields laid over a part; layers from the part outwards. */
export const SHIELDS: readonly Shield[] = [
  {
    id: 'tape',
    name: 'Polyimide tape, one layer, flat',
    layers: tape,
    notGoodFor: 'Insulation: it masks flux and holds thermocouples, it barely slows heat.',
    source: TAPE_SOURCE,
  },
  {
    id: 'tape-3',
    name: 'Polyimide tape, three layers, flat',
    layers: [...tape, ...tape, ...tape],
    notGoodFor: 'Insulation: three layers still slow little. The adhesive weakens above 260 °C.',
    source: TAPE_SOURCE,
  },
  {
    id: 'foil-flat',
    name: 'Aluminium foil, flat on the part',
    layers: [foil],
    notGoodFor: `Hot air: without a gap it only reflects infrared. ${METAL_CAUTION}`,
    source: assumption('Foil 50 µm, no gap: our assumption'),
  },
  {
    id: 'foil-tent',
    name: 'Aluminium foil, tented with a 1.5 mm gap',
    layers: [gap(1.5), foil],
    notGoodFor: METAL_CAUTION,
    source: assumption('Foil 50 µm over 1.5 mm of still air: our assumption'),
  },
  {
    id: 'cap',
    name: 'Metal cap with a 1 mm gap',
    layers: [
      gap(1),
      {
        kind: 'solid',
        name: 'Stainless steel sheet',
        thicknessMm: 0.2,
        conductivityWmK: 16,
        arealMassJm2K: 780,
        polishedOutside: true,
      },
    ],
    notGoodFor: METAL_CAUTION,
    source: assumption('Sheet 0.2 mm over 1 mm of still air: our assumption'),
  },
  {
    id: 'fibre',
    name: 'Ceramic fibre blanket, 3 mm',
    layers: [fibre],
    notGoodFor: 'Bare hands and open ports: fibres, wear gloves. Does nothing against heat through the board.',
    source: found(
      'Ceramic fibre ranked best of the dry materials (SMT Magazine, April 2015); its figures are typical',
      'M',
    ),
  },
  {
    id: 'fibre-foil',
    name: 'Ceramic fibre blanket, 3 mm, under foil',
    layers: [fibre, foil],
    notGoodFor: 'Bare hands and open ports: fibres, wear gloves. Does nothing against heat through the board.',
    source: assumption('The blanket with 50 µm of foil outside: our assumption'),
  },
];

/** The shield that 'if shielded' figures are made with. */
export const DEFAULT_SHIELD = 'foil-tent';

const byId = new Map(SHIELDS.map((shield) => [shield.id, shield]));

/** The shield with this id; undefined when the library does not hold it. */
export const shieldById = (id: string): Shield | undefined => byId.get(id);

/** Thermal resistance of the stack (m2K/W), its areal heat capacity (J/m2K), and whether its outer face is shiny. */
export function shieldResistance(shield: Shield): { m2KW: number; arealMassJm2K: number; polishedOutside: boolean } {
  let m2KW = 0;
  let arealMassJm2K = 0;
  let polishedOutside = false;
  for (const layer of shield.layers) {
    if (layer.kind === 'air-gap') {
      m2KW += layer.gapMm / 1000 / GAP_AIR_WMK;
      continue;
    }
    m2KW += layer.thicknessMm / 1000 / layer.conductivityWmK;
    arealMassJm2K += layer.arealMassJm2K;
    polishedOutside = layer.polishedOutside;
  }
  return { m2KW, arealMassJm2K, polishedOutside };
}
