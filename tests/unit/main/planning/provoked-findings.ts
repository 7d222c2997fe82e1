import { assess } from '../../../../main/planning/assess.ts';
import type { Board, Cover, Part } from '../../../../shared-types/board.ts';
import type { Evaluation, Finding, PartExposure, TargetResult } from '../../../../shared-types/evaluation.ts';
import type { HeatRun, Plan, Site } from '../../../../shared-types/plan.ts';
import type { Tag } from '../../../../shared-types/tags.ts';
import type { FindingCode } from '../../../../shared-types/words/findings.ts';
import { exchangeRows } from './provoked-exchanges.ts';
import { boardOf, evaluationOf, exposureOf, type Heat, partOf, planOf, runsOf, targetOf } from './support.ts';

export type Change = {
  parts?: Part[];
  board?: Partial<Board>;
  /** Heat of the parts, by designator. */
  heat?: Record<string, Heat>;
  plan?: (plan: Plan) => Plan;
  removal?: Partial<TargetResult>;
  installation?: Partial<TargetResult>;
  evaluation?: (evaluation: Evaluation) => Evaluation;
};

const INSTALLED = { coldestJointC: 236, secondsAllAbove: 50, secondsAnyAbove: 70, windowC: { from: 230, to: 245 } };

export function findingsAfter(change: Change): Finding[] {
  const board = boardOf(change.parts ?? [], change.board);
  const plan = (change.plan ?? ((same: Plan) => same))(planOf(board));
  const exposures: PartExposure[] = board.parts
    .filter((part) => part.fitted && change.heat?.[part.refdes])
    .map((part) => exposureOf(part, change.heat?.[part.refdes]));
  const targets = {
    removal: [targetOf(change.removal)],
    installation: [targetOf({ ...INSTALLED, ...change.installation })],
  };
  const evaluation = evaluationOf(plan, exposures, { runs: runsOf(plan, targets) });
  return assess(board, plan, (change.evaluation ?? ((same) => same))(evaluation)).findings;
}

export const withTags =
  (...tags: Tag[]) =>
  (plan: Plan): Plan => ({ ...plan, tags: [...plan.tags, ...tags] });
export const withSite =
  (site: Partial<Site>) =>
  (plan: Plan): Plan => ({ ...plan, sites: [{ ...plan.sites[0], ...site }] });
export const withRuns =
  (change: (runs: HeatRun[]) => HeatRun[]) =>
  (plan: Plan): Plan => ({ ...plan, heatRuns: change(plan.heatRuns) });
export const remove = (refdes: string, traySlot = 'A1', order = 5): Tag => ({
  id: `r-${refdes}`,
  kind: 'remove',
  refdes,
  order,
  note: '',
  goesBack: true,
  traySlot,
});
const shield = (refdes: string, id = 'foil-tent'): Tag => ({
  id: `s-${refdes}`,
  kind: 'shield',
  refdes,
  order: null,
  note: '',
  shield: id,
});
/** Two positions, R1 fitted and R2 empty; R2 wants a value that is nowhere at hand. `gbitOn`: what goes on at U1. */
export const cover = (more: Partial<Cover>): Cover => ({
  id: 'SH1',
  kind: 'can',
  side: 'top',
  x: 50,
  y: 40,
  lengthMm: 20,
  widthMm: 20,
  turn: 0,
  heightMm: 3,
  sheetMm: 0.2,
  material: 'tinned-steel',
  fixing: 'clipped',
  ...more,
});
const hold = (plan: Plan): Plan =>
  withTags({
    id: 'w2',
    kind: 'watchPoint',
    name: 'W2',
    side: 'bottom',
    x: 1,
    y: 1,
    refdes: 'L4',
    order: null,
    note: 'post below',
  })(plan);
const coil = partOf('L4', 'power-inductor', { side: 'bottom', massG: 14, padAreaMm2: 120 });
export const molten: Heat = { body: 225, joint: 224, jointMin: 222 };
export const runsWithStart =
  (siteC: number) =>
  (evaluation: Evaluation): Evaluation => ({
    ...evaluation,
    runs: evaluation.runs.map((run) => ({
      ...run,
      segments: run.segments.map((segment) => (segment.siteC === 150 ? { ...segment, siteC } : segment)),
    })),
  });

export type Row = [code: FindingCode, weight: Finding['weight'], change: Change];

/** One change of an ordinary board and plan for each finding. Sources of the figures stand in main/planning/published.ts. */
export const rows: Row[] = [
  ['target-does-not-melt', 'stop', { removal: { verdict: 'partly', coldestJointC: 212, moltenAtS: null } }],
  ['package-too-hot', 'stop', { installation: { skinMaxC: 246 } }],
  ['window-missed-cold', 'warn', { installation: { coldestJointC: 226 } }],
  [
    'target-unsure',
    'note',
    {
      installation: {
        coldestJointC: 240,
        bands: { coldestK: 25, hottestK: 25, skinK: 25, allAboveS: 20, anyAboveS: 20, moltenS: null },
      },
    },
  ],
  ['window-missed-hot', 'warn', { removal: { coldestJointC: 238 } }],
  ['outgoing-package-too-hot', 'warn', { removal: { skinMaxC: 246 } }],
  ['too-long-above-liquidus', 'warn', { removal: { secondsAnyAbove: 151 } }],
  ['above-liquidus-short', 'warn', { installation: { secondsAllAbove: 40 } }],
  ['above-liquidus-long', 'warn', { installation: { secondsAnyAbove: 91 } }],
  ['short-for-lifting', 'warn', { removal: { secondsAllAbove: 9 } }],
  ['target-melts-in-other-runs', 'warn', { heat: { U1: { joint: 230, reflows: 3 } } }],
  ['target-rises-fast', 'warn', { heat: { U1: { riseKPerS: 3.1 } } }],
  [
    'lifting-may-take-longer',
    'warn',
    {
      parts: [partOf('J1', 'connector-pbt')],
      heat: { J1: { skin: 240, secondsOver: 20, overAtS: 335 } },
    },
  ],
  ['target-uneven', 'note', { removal: { hottestJointC: 238 } }],
  ['cool-when-gas-starts', 'note', { evaluation: runsWithStart(110) }],
  [
    'long-to-peak',
    'note',
    {
      plan: withRuns((runs) =>
        runs.map((run) => ({
          ...run,
          segments: run.segments.map((segment) => ({ ...segment, seconds: segment.seconds * 1.6 })),
        })),
      ),
    },
  ],
  ['decline-or-quote', 'stop', { plan: withSite({ exchangedBefore: 2 }) }],
  ['exchanged-too-often', 'stop', { plan: withSite({ exchangedBefore: 2 }) }],
  ['exchanged-before', 'note', { plan: withSite({ exchangedBefore: 1 }) }],
  ['history-untold', 'note', { plan: withSite({ exchangedBefore: null }) }],
  ['floor-life-over', 'stop', { plan: withSite({ incoming: { moistureLevel: '3', openH: 169, thicknessMm: 1.2 } }) }],
  [
    'floor-life-unknown',
    'warn',
    { plan: withSite({ incoming: { moistureLevel: '5a', openH: null, thicknessMm: null } }) },
  ],
  ['bake-before-every-use', 'warn', { plan: withSite({ incoming: { moistureLevel: '6', openH: 0, thicknessMm: 1 } }) }],
  [
    'moisture-level-untold',
    'note',
    { plan: withSite({ incoming: { moistureLevel: 'unknown', openH: 2, thicknessMm: null } }) },
  ],
  ['in-circuit-first', 'warn', { board: { parts: [partOf('U1', 'serial-memory')] } }],
  ['target-not-on-board', 'stop', { plan: withSite({ target: 'U99' }) }],
  ['target-on-other-side', 'stop', { plan: withSite({ side: 'bottom' }) }],
  ['target-not-for-heat', 'stop', { board: { parts: [partOf('U1', 'coin-cell')] } }],
  ['target-tagged-otherwise', 'stop', { plan: withTags(shield('U1')) }],
  ['lead-meets-bismuth', 'stop', { plan: withSite({ alloyOff: 'sn63pb37', alloyOn: 'sn42bi58' }) }],
  ['soldered-can-over-target', 'stop', { board: { covers: [cover({ fixing: 'soldered' })] } }],
  ['can-over-target', 'warn', { board: { covers: [cover({})] } }],
  [
    'parts-under-can',
    'warn',
    {
      parts: [partOf('E1', 'electrolytic-small', { x: 80, y: 40 })],
      heat: { E1: { joint: 225 } },
      board: { covers: [cover({ x: 80 })] },
    },
  ],
  [
    'target-has-two-sites',
    'warn',
    { plan: (plan) => ({ ...plan, sites: [plan.sites[0], { ...plan.sites[0], id: 'site-2' }] }) },
  ],
  ['target-not-fitted', 'warn', { board: { parts: [partOf('U1', 'bga', { fitted: false })] } }],
  ['target-underfilled', 'warn', { board: { parts: [partOf('U1', 'bga', { underfilled: true })] } }],
  ['target-edge-bonded', 'warn', { board: { parts: [partOf('U1', 'bga', { edgeBonded: true })] } }],
  ['target-coated', 'warn', { board: { parts: [partOf('U1', 'bga', { coated: true })] } }],
  ['target-holds-data', 'warn', { board: { parts: [partOf('U1', 'flash-memory')] } }],
  ['site-alloy-unknown', 'warn', { plan: withSite({ alloyOff: 'unknown' }) }],
  ['alloys-differ', 'warn', { plan: withSite({ alloyOff: 'sn63pb37' }) }],
  ['always-off-still-on', 'stop', { parts: [partOf('BT1', 'coin-cell')] }],
  [
    'neighbour-cannot-be-saved',
    'stop',
    { parts: [partOf('U2', 'bga', { underfilled: true })], heat: { U2: { joint: 210 } } },
  ],
  [
    'neighbours-need-action',
    'warn',
    { parts: [partOf('J1', 'connector-pbt')], heat: { J1: { skin: 226, shieldedSkin: 190 } } },
  ],
  [
    'margins-slim',
    'warn',
    {
      parts: [partOf('J1', 'connector-pbt')],
      heat: { J1: { skin: 190 } },
      evaluation: (evaluation) => ({ ...evaluation, bands: 'not-computed' }),
    },
  ],
  ['drop-off', 'warn', { parts: [coil], heat: { L4: molten } }],
  ['drop-off-held', 'note', { parts: [coil], heat: { L4: molten }, plan: hold }],
  ['large-parts-reflow', 'warn', { parts: [partOf('U2', 'bga')], heat: { U2: molten } }],
  ['array-may-crack', 'warn', { parts: [partOf('U2', 'bga')], heat: { U2: { body: 196, joint: 198 } } }],
  [
    'joints-over-preset',
    'note',
    {
      parts: [partOf('U2', 'so')],
      heat: {
        U2: {
          body: 205,
          joint: 205,
          limits: {
            joint: { celsius: 200, origin: 'shop', source: { text: 'preset', how: 'found', confidence: 'M' } },
          },
        },
      },
    },
  ],
  [
    'reflow-count',
    'warn',
    {
      parts: [partOf('U2', 'bga'), partOf('R9', 'chip-resistor', { side: 'bottom' })],
      heat: { U2: { ...molten, reflows: 2 } },
    },
  ],
  ['data-at-risk', 'warn', { parts: [partOf('U3', 'flash-memory')], heat: { U3: molten } }],
  ['coated-joints-melt', 'warn', { parts: [partOf('R1', 'chip-resistor', { coated: true })], heat: { R1: molten } }],
  ['electrolytic-close', 'warn', { parts: [partOf('C9', 'electrolytic-medium')], heat: { C9: { clearanceMm: 8 } } }],
  ['port-close', 'warn', { parts: [partOf('MK1', 'mems-microphone')], heat: { MK1: { clearanceMm: 25 } } }],
  ['rises-too-fast', 'warn', { parts: [partOf('U2', 'qfn')], heat: { U2: { riseKPerS: 3.1 } } }],
  ['small-parts-rise-fast', 'note', { parts: [partOf('R1', 'chip-resistor')], heat: { R1: { riseKPerS: 3.1 } } }],
  [
    'ceramic-jump-over',
    'warn',
    { parts: [partOf('C1', 'chip-capacitor')], heat: { C1: { body: 225, joint: 210 } }, evaluation: runsWithStart(30) },
  ],
  [
    'ceramic-jump',
    'warn',
    { parts: [partOf('C1', 'chip-capacitor')], heat: { C1: { body: 225, joint: 210 } }, evaluation: runsWithStart(74) },
  ],
  [
    'reflow-count-small',
    'note',
    {
      parts: [partOf('C1', 'chip-capacitor'), partOf('R9', 'chip-resistor', { side: 'bottom' })],
      heat: { C1: { ...molten, reflows: 2 } },
    },
  ],
  ['within-keep-out', 'note', { parts: [partOf('R1', 'chip-resistor')], heat: { R1: { clearanceMm: 3.1 } } }],
  ['bake-first', 'note', { parts: [partOf('R1', 'chip-resistor')], heat: { R1: { body: 201 } } }],
  ['no-site', 'stop', { plan: (plan) => ({ ...plan, sites: [], heatRuns: [], tags: [] }) }],
  ['no-heat-run', 'stop', { plan: withRuns(() => []) }],
  ['site-without-run', 'stop', { plan: withRuns((runs) => runs.map((run) => ({ ...run, siteIds: [] }))) }],
  [
    'run-without-site',
    'warn',
    { plan: withRuns((runs) => runs.map((run) => ({ ...run, siteIds: run.kind === 'removal' ? [] : run.siteIds }))) },
  ],
  [
    'run-without-gas',
    'warn',
    {
      plan: withRuns((runs) =>
        runs.map((run) => ({ ...run, segments: run.segments.map((segment) => ({ ...segment, gas: null })) })),
      ),
    },
  ],
  ['tag-on-unknown-part', 'warn', { plan: withTags(remove('R77')) }],
  [
    'tag-on-empty-position',
    'warn',
    { parts: [partOf('R7', 'chip-resistor', { fitted: false })], plan: withTags(remove('R7')) },
  ],
  [
    'shield-on-removed-part',
    'warn',
    { parts: [partOf('J1', 'connector-pbt')], plan: withTags(remove('J1'), shield('J1')) },
  ],
  [
    'shield-not-in-library',
    'warn',
    { parts: [partOf('J1', 'connector-pbt')], plan: withTags(shield('J1', 'no-such-shield')) },
  ],
  ['tray-slot-missing', 'warn', { parts: [partOf('J1', 'connector-pbt')], plan: withTags(remove('J1', ' ')) }],
  [
    'tray-slot-twice',
    'warn',
    {
      parts: [partOf('J1', 'connector-pbt'), partOf('J2', 'connector-pbt')],
      plan: withTags(remove('J1', 'A1'), remove('J2', 'a1', 6)),
    },
  ],
  ['order-twice', 'warn', { parts: [partOf('J1', 'connector-pbt')], plan: withTags(remove('J1', 'A1', 1)) }],
  [
    'no-watch-point',
    'warn',
    { plan: (plan) => ({ ...plan, tags: plan.tags.filter((tag) => tag.kind !== 'watchPoint') }) },
  ],
  ['site-without-removal', 'note', { plan: withRuns((runs) => runs.filter((run) => run.kind !== 'removal')) }],
  [
    'site-without-installation',
    'note',
    { plan: withRuns((runs) => runs.filter((run) => run.kind !== 'installation')) },
  ],
  ['iron-not-modelled', 'note', {}],
  ['shields-conduct', 'note', { parts: [partOf('J1', 'connector-pbt')], plan: withTags(shield('J1')) }],
  [
    'parts-off-board',
    'warn',
    {
      parts: [partOf('J1', 'connector-pbt')],
      evaluation: (evaluation) => ({ ...evaluation, notEvaluated: [{ refdes: 'J1', reason: 'off-board' }] }),
    },
  ],
  ['plastics-unknown', 'warn', { parts: [partOf('J1', 'connector-unknown')], heat: { J1: {} } }],
  ['classes-unknown', 'warn', { parts: [partOf('Z1', 'unknown')], heat: { Z1: {} } }],
  ['laminate-guessed', 'warn', { board: { laminate: { thicknessMm: 1.6, layers: [], layersKnown: false } } }],
  ['alloys-unknown', 'note', { parts: [partOf('R1', 'chip-resistor', { alloy: 'unknown' })] }],
  ['classes-guessed', 'note', { parts: [partOf('R1', 'chip-resistor', { classGuessed: true })], heat: { R1: {} } }],
  [
    'heights-unknown',
    'note',
    {
      parts: [
        partOf('R1', 'chip-resistor', {
          package: { name: '', shape: 'rectangle', lengthMm: 2, widthMm: 1, heightMm: null },
        }),
      ],
      heat: { R1: {} },
    },
  ],
  [
    'grid-grown',
    'note',
    { evaluation: (evaluation) => ({ ...evaluation, grid: { ...evaluation.grid, grownFromMm: 1, cellMm: 1.5 } }) },
  ],
  ['outlet-not-measured', 'note', { plan: (plan) => ({ ...plan, station: { ...plan.station, gasReads: 'setting' } }) }],
  ...exchangeRows,
  ['bands-not-computed', 'note', { evaluation: (evaluation) => ({ ...evaluation, bands: 'not-computed' }) }],
];
