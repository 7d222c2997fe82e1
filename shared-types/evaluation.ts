import type { Side } from './geometry.ts';
import type { Source } from './library/library-types.ts';
import type { PartBands, TargetBands, ThermocouplePlace, Uncertainty } from './uncertainty.ts';

/** Peak over time: hottest and coldest place of the part, and its mean; C. */
export type PeakC = { maxC: number; minC: number; meanC: number };

/** The grid that the fields lie on: cell (column, row) has its centre at origin + (index + 0.5) x cell. Row 0 is the lowest. */
export type FieldGrid = {
  columns: number;
  rows: number;
  cellMm: number;
  originX: number;
  originY: number;
  /** Set when the board was too large for the wanted cell. */
  grownFromMm: number | null;
};

/** Peak temperature of the two faces, C, one value a cell, row after row; NaN where there is no board. */
export type FaceFields = { top: Float32Array; bottom: Float32Array };

/** Half widths of the 90 % bands of the maps, K, on a grid of their own: of the worst over all heat runs, and of each. */
export type BandFields = { grid: FieldGrid; worst: FaceFields; runs: { runId: string; fields: FaceFields }[] };

export type JudgedOn = 'body' | 'skin' | 'joint';
export type LimitOrigin = 'own' | 'class' | 'alloy' | 'shop';
export type AppliedLimit = { celsius: number; origin: LimitOrigin; source: Source };

/** `clear`: margin above the band; `unsure`: within it; `over`: beyond the limit. Without bands the band counts as 0. */
export type PartState = 'clear' | 'unsure' | 'over';

/** What one part goes through, the worst over all heat runs. */
export type PartExposure = {
  refdes: string;
  side: Side;
  /** Heat run in which the margin is smallest. */
  worstRunId: string;
  body: PeakC;
  skin: PeakC;
  joint: PeakC;
  /** Gap from the part's body to the nearest rework area's edge, mm; 0 inside. */
  clearanceMm: number;
  /** Time of the body's peak in the worst run, s from its start. */
  peakAtS: number;
  /** Seconds above the limit that governs, in the worst run. */
  secondsOver: number;
  /** When it first passes the limit that governs, in the worst run, s from its start; null: never. Absent: not told. */
  overAtS?: number | null;
  /** Largest rise over any 5 s, K/s. */
  riseKPerS: number;
  /** Largest difference across the part's body at its peak, K. */
  acrossK: number;
  /** Energy into the body until its peak, by way, as shares of what came in (losses: share that went out again). */
  shares: { gas: number; preheater: number; joints: number; losses: number };
  /** The same part under the default shield, same face. */
  ifShielded: { bodyMaxC: number; skinMaxC: number; jointMaxC: number };
  limits: { body: AppliedLimit | null; skin: AppliedLimit | null; joint: AppliedLimit | null };
  /** Limit minus peak, K; null where no limit applies. */
  margins: { body: number | null; skin: number | null; joint: number | null };
  /** The smallest margin, K. */
  marginK: number;
  governedBy: JudgedOn;
  /** Half width of the 90 % band, K; null: not computed yet. */
  bandK: number | null;
  /** Bands of each figure; absent: not computed yet. */
  bands?: PartBands;
  state: PartState;
  /** Its joints pass solidus in at least one run. `partly`: some joints do, others stay solid. */
  reflow: 'none' | 'partly' | 'whole';
  /** Heat runs in which its joints pass solidus. */
  reflows: number;
  /** Heat runs above 150 C that are no reflow. */
  warmCycles: number;
  /** Solidus that the joints were judged with, C. */
  solidusC: number;
};

/** The map of one moment of a heat run; its grid may be coarser than that of the peaks. C. */
export type HeatMoment = { atS: number; grid: FieldGrid } & FaceFields;

/** Curves of a heat run, a value every `stepS` seconds from its start, C. */
export type CurveSet = {
  stepS: number;
  parts: {
    refdes: string;
    body: Float32Array;
    skin: Float32Array;
    jointMax: Float32Array;
    jointMin: Float32Array;
  }[];
  points: { tagId: string; name: string; celsius: Float32Array }[];
  /** The preheater's source, and the board at the run's site where it has one. */
  preheater: Float32Array;
  site: Float32Array | null;
};

/** The target of a site in one heat run. */
export type TargetResult = {
  siteId: string;
  refdes: string;
  coldestJointC: number;
  hottestJointC: number;
  skinMaxC: number;
  /** Package limit Tc - 5, C. */
  skinLimitC: number;
  liquidusC: number;
  /** Seconds in which every joint is above liquidus, and in which any is. */
  secondsAllAbove: number;
  secondsAnyAbove: number;
  /** When the coldest joint passes liquidus, s; null: never. */
  moltenAtS: number | null;
  /** The board under the part when the gas first starts at its site, C: mean of coldest and hottest. Absent: no gas there. */
  boardAtGasC?: number;
  /** Window of the coldest joint for this kind of run, C. */
  windowC: { from: number; to: number } | null;
  verdict: 'melts' | 'partly' | 'solid';
  /** Absent: not computed yet. */
  bands?: TargetBands;
};

/** A watch point's predicted reading. */
export type WatchReading = {
  tagId: string;
  name: string;
  peakC: number;
  peakAtS: number;
  atSegmentEndC: number[];
  /** Half widths of the 90 % bands, K; absent: not computed yet. */
  peakBandK?: number;
  atSegmentEndBandK?: number[];
};

/** Board temperature and source temperature at the end of each segment. */
export type SegmentReading = {
  name: string;
  endsAtS: number;
  gasSetC: number | null;
  gasOutletC: number | null;
  preheaterSourceC: number;
  siteC: number;
  /** Half width of the 90 % band of `siteC`, K; absent: not computed yet. */
  siteBandK?: number;
};

export type RunResult = {
  runId: string;
  seconds: number;
  /** Board temperature at the run's first site: one value a step, from time 0 on, C. Absent: only the segments' ends. */
  siteSeries?: { stepS: number; celsius: number[] };
  fields: FaceFields;
  targets: TargetResult[];
  watch: WatchReading[];
  segments: SegmentReading[];
};

/** Something the evaluation wants said, with the figures its sentence needs. Sentences: words/heat.ts. */
export type EvaluationNotice = {
  code: string;
  /** Part, site or run it is about. */
  place: string | null;
  figures: Record<string, number | string>;
};

/** What one evaluation found. Derived: never saved, always reproducible from the ticket. Typed arrays travel as binary. */
export type Evaluation = {
  revision: number;
  phase: 'coarse' | 'fine';
  grid: FieldGrid;
  /** Worst over all heat runs. */
  fields: FaceFields;
  runs: RunResult[];
  parts: PartExposure[];
  notEvaluated: { refdes: string; reason: 'off-board' | 'not-fitted' | 'removed' }[];
  notices: EvaluationNotice[];
  bands: 'not-computed' | 'computed';
  /** What the bands rest on. */
  uncertainty?: Uncertainty;
  /** Bands of the maps; absent: not computed yet. */
  bandFields?: BandFields;
};

/** What planning advises for one part. */
export type ActionKind =
  | 'leave'
  | 'leave-will-reflow'
  | 'shield'
  | 'secure'
  | 'remove-first'
  | 'cannot-be-saved'
  | 'target';

export type PartAction = {
  refdes: string;
  action: ActionKind;
  /** Code of the reason; the sentence is made by words/planning.ts from it and the figures. */
  reason: string;
  figures: Record<string, number | string>;
  /** True when the plan already does it (tag set). */
  done: boolean;
};

export type Finding = {
  code: string;
  weight: 'stop' | 'warn' | 'note';
  place: { kind: 'part' | 'site' | 'run' | 'board' | 'station'; id: string };
  figures: Record<string, number | string>;
  source: Source | null;
};

/**
 * Numbers to act on at the bench, one entry for each target of each heat run. A number that the evaluation does not
 * carry is left out: nothing here is guessed. Times in s from the start of the run.
 */
export type RunNumbers = {
  runId: string;
  siteId: string;
  refdes: string;
  /** Board temperature at the site when the gas starts, C: 'start the gas at N'. */
  startGasAtC?: number;
  /** Planned start of the gas at this site. */
  gasFromS?: number;
  /** When the coldest joint passes liquidus. */
  moltenAtS?: number;
  /** 'Not there by N s: stop'. The end of the planned gas at this site; only where the target is predicted to melt. */
  notMoltenByS?: number;
  /** 'Off if the reading passes N', C. */
  abortAtC?: number;
  /** What is read for it: a watch point's name, or 'site' for the board temperature at the site. */
  abortOn?: string;
  /** The neighbour whose limit the abort reading stands for. */
  abortFor?: string;
  /** From the target being molten until the first neighbour passes its limit, s; negative: the neighbour is earlier. */
  secondsToSpare?: number;
  /** The first neighbour that passes its limit in this run. */
  firstOver?: string;
  /** Half widths of the 90 % bands of the numbers above; absent: not computed yet, or not told by every run. */
  startGasBandK?: number;
  moltenBandS?: number;
  abortBandK?: number;
  spareBandS?: number;
};

/** Everything the window and the sheet show about a plan at one revision. */
export type Assessment = {
  evaluation: Evaluation;
  actions: PartAction[];
  findings: Finding[];
  runNumbers: RunNumbers[];
  /** Ids of the cautions that apply; sentences in words/cautions.ts. */
  cautions: string[];
  /** Where thermocouples would make the figures surest; absent: bands not computed yet. */
  thermocouples?: ThermocouplePlace[];
};
