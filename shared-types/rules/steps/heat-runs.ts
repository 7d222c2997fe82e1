import type { RunNumbers, RunResult } from '../../evaluation.ts';
import { alloyById } from '../../library/alloys.ts';
import { classById } from '../../library/classes.ts';
import { floorLifeH } from '../../library/moisture.ts';
import { found } from '../../library/sources.ts';
import type { HeatRun, Site } from '../../plan.ts';
import {
  draft,
  foundFigures,
  fromTag,
  partName,
  phaseAfter,
  phaseOf,
  runAt,
  type StepContext,
  tagsOfKind,
} from './context.ts';
import { dataParts } from './received.ts';
import type { Expected, StepDraft } from './types.ts';

const EXCHANGES = found(
  'Practice of shops: two replacements of an array, then scrap (SMTnet 6465); IPC-7711/21 sets no limit',
  'M',
);

export const sitesOf = ({ plan }: StepContext, run: HeatRun): Site[] =>
  run.siteIds.flatMap((id) => plan.sites.filter((site) => site.id === id));

/** Readings of the thermocouples where gas starts and ends, the times of each target; as predicted. */
function heatReadings(run: HeatRun, result: RunResult | undefined, numbers: readonly RunNumbers[]): Expected[] {
  if (!result) return [];
  const first = run.segments.findIndex(({ gas }) => gas !== null);
  const last = run.segments.findLastIndex(({ gas }) => gas !== null);
  if (first < 0) return [];
  const reads = (name: 'at-gas-on' | 'at-gas-off', segment: number): Expected[] =>
    result.watch.flatMap((watch) => {
      const celsius = watch.atSegmentEndC[segment];
      const bandK = watch.atSegmentEndBandK?.[segment];
      if (celsius === undefined || !Number.isFinite(celsius)) return [];
      return [
        {
          key: `${name}:${watch.name}`,
          name,
          of: watch.name,
          unit: 'C',
          predicted: celsius,
          ...(bandK !== undefined && { bandK }),
        },
      ];
    });
  const [one] = numbers;
  const site: Expected[] =
    first > 0 && result.watch.length === 0 && one?.startGasAtC !== undefined
      ? [
          {
            key: 'site-at-gas-on',
            name: 'site-at-gas-on',
            of: one.refdes,
            unit: 'C',
            predicted: one.startGasAtC,
            ...(one.startGasBandK !== undefined && { bandK: one.startGasBandK }),
          },
        ]
      : [];
  const times = numbers.flatMap(({ refdes, moltenAtS, moltenBandS, notMoltenByS }): Expected[] =>
    moltenAtS === undefined
      ? []
      : [
          {
            key: `molten-at:${refdes}`,
            name: 'molten-at',
            of: refdes,
            unit: 's',
            predicted: moltenAtS,
            ...(moltenBandS !== undefined && { bandK: moltenBandS }),
          },
          ...(notMoltenByS === undefined
            ? []
            : [
                {
                  key: `gas-off-at:${refdes}`,
                  name: 'gas-off-at',
                  of: refdes,
                  unit: 's',
                  predicted: notMoltenByS,
                } as const,
              ]),
        ],
  );
  return [...(first > 0 ? reads('at-gas-on', first - 1) : []), ...site, ...times, ...reads('at-gas-off', last)];
}

function heatStep(context: StepContext, run: HeatRun, place: number): StepDraft {
  const { assessment } = context;
  const result = assessment?.evaluation.runs.find(({ runId }) => runId === run.id);
  const numbers = assessment?.runNumbers.filter(({ runId }) => runId === run.id) ?? [];
  const targets = sitesOf(context, run).map(({ target }) => target);
  const mustMelt = run.kind === 'removal' || run.kind === 'installation';
  const solid = mustMelt ? (result?.targets ?? []).filter(({ verdict }) => verdict !== 'melts') : [];
  const abort = numbers.find(({ abortAtC }) => abortAtC !== undefined);
  const gasOn = run.segments.findIndex(({ gas }) => gas !== null);
  const figures = {
    run: run.name,
    place,
    of: context.runs.length,
    kind: run.kind,
    side: run.side,
    targets: targets.join(', '),
    ...(gasOn > 0 && { gasOnS: run.segments.slice(0, gasOn).reduce((sum, { seconds }) => sum + seconds, 0) }),
    ...(abort && { abortC: abort.abortAtC ?? 0, abortOn: abort.abortOn ?? 'site', abortFor: abort.abortFor ?? '' }),
    ...(solid.length > 0 && { solid: solid.map(({ refdes }) => refdes).join(', ') }),
  };
  return draft('heat', run.id, phaseOf(run), figures, {
    parts: targets,
    expects: solid.length > 0 ? [] : heatReadings(run, result, numbers),
    cautions: ['burns', 'fumes', 'eyes'],
    alert: solid.length > 0 ? 'stop' : null,
  });
}

/** The lowest solidus among what melts in a run, C; null: not worked out. */
function solidBelow({ assessment, plan }: StepContext, run: HeatRun): number | null {
  if (!assessment) return null;
  const targets = new Set(plan.sites.flatMap(({ id, target }) => (run.siteIds.includes(id) ? [target] : [])));
  const melting = assessment.evaluation.parts.filter(({ refdes, reflow }) => reflow !== 'none' || targets.has(refdes));
  return melting.length === 0 ? null : Math.min(...melting.map(({ solidusC }) => solidusC));
}

function liftSteps(context: StepContext, run: HeatRun): StepDraft[] {
  return sitesOf(context, run).map((site, rank) => {
    const part = context.parts.get(site.target);
    const tag = tagsOfKind(context.plan, 'replace').find(({ siteId }) => siteId === site.id);
    const held = part?.underfilled ? 'underfilled' : part?.edgeBonded ? 'bonded' : '';
    const numbers = context.assessment?.runNumbers.find((one) => one.runId === run.id && one.siteId === site.id);
    const softens = held === 'underfilled' ? foundFigures(context, 'target-underfilled', site.id) : undefined;
    const figures = {
      refdes: site.target,
      name: tag?.comesOff || partName(part),
      held,
      ...(softens && { aboveC: softens.figures.aboveC }),
      ...(numbers?.notMoltenByS !== undefined && { byS: numbers.notMoltenByS }),
    };
    return draft('lift', `${run.id}:${site.target}`, phaseOf(run), figures, {
      parts: [site.target],
      source: softens?.source ?? null,
      cautions: held ? ['burns', 'underfill'] : ['burns'],
      rank,
      ...(tag && fromTag(tag)),
    });
  });
}

const mayHoldLead = ({ alloyOff, alloyOn }: Site): boolean =>
  [alloyOff, alloyOn].some((id) => alloyById(id)?.leadFree !== true);

const alloyName = (id: string): string => alloyById(id)?.name ?? '';

/** The worst weight among findings about a site. */
function worstOf({ assessment }: StepContext, siteId: string, codes: readonly string[]): 'stop' | 'warn' | null {
  const weights = (assessment?.findings ?? []).flatMap(({ code, place, weight }) =>
    place.kind === 'site' && place.id === siteId && codes.includes(code) ? [weight] : [],
  );
  return weights.includes('stop') ? 'stop' : weights.includes('warn') ? 'warn' : null;
}

/** The site between two parts: dressed, inspected; where a preparation run is planned, dressing is its work. */
function dressSteps(context: StepContext, run: HeatRun, sites: readonly Site[]): StepDraft[] {
  const own = run.kind === 'site-preparation';
  return sites.flatMap((site, rank) => {
    const figures = {
      refdes: site.target,
      from: alloyName(site.alloyOff),
      to: alloyName(site.alloyOn),
      mixed: Number(site.alloyOff !== site.alloyOn),
      warm: Number(own),
    };
    const inspect = {
      refdes: site.target,
      ...(site.exchangedBefore !== null && { number: site.exchangedBefore + 1 }),
    };
    const worn = worstOf(context, site.id, ['exchanged-too-often']);
    return [
      draft('dress', `${run.id}:${site.target}`, own ? phaseOf(run) : phaseAfter(context, run), figures, {
        parts: [site.target],
        cautions: ['burns', 'fumes', ...(mayHoldLead(site) ? (['lead'] as const) : [])],
        rank,
      }),
      draft('inspect-pads', `${run.id}:${site.target}`, phaseAfter(context, run), inspect, {
        parts: [site.target],
        source: EXCHANGES,
        alert: worn,
        rank,
      }),
    ];
  });
}

/** What goes on at a site: checked against the order, programmed where it holds firmware, placed. */
function placeSteps(context: StepContext, run: HeatRun): StepDraft[] {
  const written = new Set(dataParts(context).flatMap(({ part, how }) => (how === 'written' ? [part.refdes] : [])));
  return sitesOf(context, run).flatMap((site, rank) => {
    const part = context.parts.get(site.target);
    const tag = tagsOfKind(context.plan, 'replace').find(({ siteId }) => siteId === site.id);
    const exchange = context.plan.exchanges.find(({ siteId }) => siteId === site.id);
    const { moistureLevel: level, openH } = site.incoming;
    const lifeH = level === 'unknown' ? null : floorLifeH(level);
    const about = { parts: [site.target], rank };
    const name = tag?.goesOn || exchange?.on.name || partName(part);
    const figures = {
      refdes: site.target,
      name,
      marking: exchange?.on.marking ?? '',
      count: exchange?.on.count ?? 1,
      agrees: exchange?.agrees ?? 'not-checked',
      balls: alloyName(exchange?.on.ballAlloy ?? 'unknown'),
      joints: alloyName(site.alloyOn),
      level,
      ...(lifeH !== null && { lifeH }),
    };
    const open: Expected[] =
      lifeH === null ? [] : [{ key: 'open-h', name: 'open-h', of: '', unit: 'h', predicted: openH }];
    const alert = worstOf(context, site.id, [
      'balls-differ',
      'incoming-differs',
      'floor-life-over',
      'floor-life-unknown',
    ]);
    const array = classById(part?.class ?? 'unknown').arrayPart;
    // Written once, before it is placed for the first time.
    const program =
      written.has(site.target) && runAt(context, site.id, 'installation') === run
        ? [
            draft(
              'program-part',
              site.target,
              phaseOf(run),
              { refdes: site.target, name },
              {
                ...about,
                expects: [{ key: 'check-sum', name: 'check-sum', of: '', unit: 'text', predicted: null }],
                cautions: ['static'],
              },
            ),
          ]
        : [];
    return [
      draft('incoming', `${run.id}:${site.target}`, phaseOf(run), figures, {
        ...about,
        expects: open,
        alert,
        cautions: ['static'],
      }),
      ...program,
      draft(
        'place',
        `${run.id}:${site.target}`,
        phaseOf(run),
        { refdes: site.target, name, array: Number(array), pin1: Number(part?.pin1 !== undefined) },
        {
          ...about,
          cautions: ['static'],
          ...(tag && fromTag(tag)),
        },
      ),
    ];
  });
}

/** Each heat run in the order of work, with what is done in it and right behind it. */
export function heatRunSteps(context: StepContext): StepDraft[] {
  return context.runs.flatMap((run, index) => {
    const cool = solidBelow(context, run);
    const steps = [
      heatStep(context, run, index + 1),
      draft(
        'cool',
        run.id,
        phaseOf(run),
        { run: run.name, ...(cool !== null && { solidusC: cool }) },
        { cautions: ['burns'] },
      ),
    ];
    if (run.kind === 'site-preparation') steps.push(...dressSteps(context, run, sitesOf(context, run)));
    if (run.kind === 'installation') steps.push(...placeSteps(context, run));
    if (run.kind !== 'removal') return steps;
    const unprepared = sitesOf(context, run).filter((site) => !runAt(context, site.id, 'site-preparation'));
    return [...steps, ...liftSteps(context, run), ...dressSteps(context, run, unprepared)];
  });
}
