import type { Shield, ShieldLayer, ShieldParameter } from './library-types.ts';
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
    name: 'Polyimide tape, flat',
    layers: tape,
    adjustable: ['layers'],
    notGoodFor: 'Insulation: it masks flux and holds thermocouples, it barely slows heat.',
    source: TAPE_SOURCE,
  },
  {
    id: 'tape-3',
    name: 'Polyimide tape, three layers, flat',
    layers: [...tape, ...tape, ...tape],
    adjustable: [],
    notGoodFor: 'Insulation: three layers still slow little. The adhesive weakens above 260 °C.',
    source: TAPE_SOURCE,
  },
  {
    id: 'foil-flat',
    name: 'Aluminium foil, flat on the part',
    layers: [foil],
    adjustable: [],
    notGoodFor: `Hot air: without a gap it only reflects infrared. ${METAL_CAUTION}`,
    source: assumption('Foil 50 µm, no gap: our assumption'),
  },
  {
    id: 'foil-tent',
    name: 'Aluminium foil, tented with a 1.5 mm gap',
    layers: [gap(1.5), foil],
    adjustable: ['gapMm'],
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
    adjustable: ['gapMm'],
    notGoodFor: METAL_CAUTION,
    source: assumption('Sheet 0.2 mm over 1 mm of still air: our assumption'),
  },
  {
    id: 'fibre',
    name: 'Ceramic fibre blanket, 3 mm a layer',
    layers: [fibre],
    adjustable: ['layers'],
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
    adjustable: [],
    notGoodFor: 'Bare hands and open ports: fibres, wear gloves. Does nothing against heat through the board.',
    source: assumption('The blanket with 50 µm of foil outside: our assumption'),
  },
  {
    id: 'block',
    name: 'Aluminium block, 8 mm, on a soft pad',
    layers: [{ ...foil, name: 'Bright aluminium', thicknessMm: 0, arealMassJm2K: 0 }],
    // 8 mm of aluminium, 2.43 MJ/m3K; a 0.5 mm pad of 1.5 W/mK with its two contacts. Handbook values, from memory.
    mass: { kind: 'block', arealMassJm2K: 19440, padWm2K: 1000 },
    adjustable: [],
    notGoodFor:
      'Long heat: it only takes heat up until it is hot itself, then it keeps the part hot. Its weight shifts a part whose joints melt, and beside the target it draws heat from it. Lay it on cold.',
    source: assumption('8 mm of aluminium over a pad of 1000 W/m²K: our assumption'),
  },
  {
    id: 'gel',
    name: 'Wet gel',
    layers: [],
    // Water 0.6 W/mK (handbook); a tenth of clay and binder, 900 J/kgK, dry 0.2 W/mK: assumptions of ours.
    mass: { kind: 'gel', waterMm: 2, solidsShare: 0.1, solidsJkgK: 900, wetWmK: 0.6, dryWmK: 0.2 },
    adjustable: ['waterG'],
    notGoodFor:
      'Connectors, ports, switches, and gaps under array parts: it is wet and must come off whole. Needs proof of ionic cleanliness; clean with alcohol and brush. Dry it insulates little; it takes heat from the target nearby. Steam: keep faces away.',
    source: found(
      'Water-based clay and gel ranked best of the materials compared (SMT Magazine, April 2015); exclusions from memory; latent heat 2257 kJ/kg, steam tables',
      'M',
    ),
  },
];

/** The shield that 'if shielded' figures are made with. */
export const DEFAULT_SHIELD = 'foil-tent';

const byId = new Map(SHIELDS.map((shield) => [shield.id, shield]));

/** The shield with this id; undefined when the library does not hold it. */
export const shieldById = (id: string): Shield | undefined => byId.get(id);

/** What a plan says otherwise about a shield on a part. */
export type ShieldAdjustment = { gapMm?: number; layers?: number; waterG?: number };

/** The layers of a shield as the plan has them: gaps of its own, the whole stack so many times. */
export function layersOf(shield: Shield, { gapMm, layers }: ShieldAdjustment = {}): ShieldLayer[] {
  const may = (name: ShieldParameter) => shield.adjustable.includes(name);
  const times = may('layers') ? (layers ?? 1) : 1;
  const stack = Array.from({ length: times }, () => shield.layers).flat();
  if (!may('gapMm') || gapMm === undefined) return stack;
  return stack.map((layer) => (layer.kind === 'air-gap' ? { ...layer, gapMm } : layer));
}

/** Thermal resistance of the stack (m2K/W), its areal heat capacity (J/m2K), and whether its outer face is shiny. */
export function shieldResistance(
  shield: Shield,
  adjustment: ShieldAdjustment = {},
): { m2KW: number; arealMassJm2K: number; polishedOutside: boolean } {
  let m2KW = 0;
  let arealMassJm2K = 0;
  let polishedOutside = false;
  for (const layer of layersOf(shield, adjustment)) {
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

/** Water of a gel on a part, g: what the plan says, else the usual depth over the part's plan area. */
export function gelWaterG(shield: Shield, adjustment: ShieldAdjustment, areaMm2: number): number {
  if (shield.mass?.kind !== 'gel') return 0;
  return adjustment.waterG ?? (shield.mass.waterMm * areaMm2) / 1000;
}

/** Density of water, kg/m3. */
const WATER_KG_M3 = 1000;

/** The mass of a shield on a part: heat (J/m2K), conductance to the part wet and dry (W/m2K), water (kg/m2); null: none. */
export function shieldMass(
  shield: Shield,
  adjustment: ShieldAdjustment,
  areaMm2: number,
): { arealHeat: number; wetConductance: number; dryConductance: number; waterKgM2: number } | null {
  const { mass } = shield;
  if (!mass) return null;
  if (mass.kind === 'block') {
    const { arealMassJm2K: arealHeat, padWm2K } = mass;
    return { arealHeat, wetConductance: padWm2K, dryConductance: padWm2K, waterKgM2: 0 };
  }
  const waterKgM2 = gelWaterG(shield, adjustment, areaMm2) / 1000 / (areaMm2 / 1e6);
  const solidsKgM2 = waterKgM2 * mass.solidsShare;
  const thicknessM = waterKgM2 / WATER_KG_M3;
  return {
    arealHeat: solidsKgM2 * mass.solidsJkgK,
    // From the middle of the wet gel to the part; dry, through all that is left.
    wetConductance: mass.wetWmK / (thicknessM / 2),
    dryConductance: mass.dryWmK / thicknessM,
    waterKgM2,
  };
}
