import type { Part } from '../../board.ts';
import { classById } from '../../library/classes.ts';
import { layersOf, shieldById } from '../../library/shields.ts';
import { found } from '../../library/sources.ts';
import type { CautionId } from '../../words/cautions.ts';
import { bakeFigures } from '../bake.ts';
import { naturalOrder } from '../designators.ts';
import {
  type CoverOff,
  draft,
  foundFigures,
  fromTag,
  ironCautions,
  isCell,
  partName,
  phaseBeforeHeat,
  phaseOf,
  type StepContext,
  tagsOfKind,
} from './context.ts';
import type { Expected, StepDraft } from './types.ts';

const LITHIUM = found('Panasonic lithium cells, soldering: body never above 85 °C; Renata: never reflow a battery');
const GEL = found('SMT Magazine, April 2015: wet gel shields best, and asks for proof of cleanliness afterwards', 'M');

/** Fitted parts that come off before heat: tagged, or of a class that always does, with the tag or null. */
export function partsOff({ board, plan, parts }: StepContext) {
  const tags = tagsOfKind(plan, 'remove').filter(({ refdes }) => parts.has(refdes));
  const tagged = new Set(
    plan.tags.flatMap(({ kind, refdes }) => (kind === 'remove' || kind === 'replace' ? [refdes] : [])),
  );
  for (const site of plan.sites) tagged.add(site.target);
  const untagged = board.parts.filter(
    (part) => part.fitted && classById(part.class).alwaysRemove && !tagged.has(part.refdes),
  );
  const once = tags.filter((tag, index) => tags.findIndex(({ refdes }) => refdes === tag.refdes) === index);
  return [
    ...once.map((tag) => ({ refdes: tag.refdes, tag })),
    ...untagged.map(({ refdes }) => ({ refdes, tag: null })),
  ];
}

function offStep(context: StepContext, { refdes, tag }: ReturnType<typeof partsOff>[number]): StepDraft {
  const part = context.parts.get(refdes);
  const cell = isCell(part);
  const { alwaysRemove } = classById(part?.class ?? 'unknown');
  const figures = {
    refdes,
    name: partName(part),
    slot: tag?.traySlot ?? '',
    note: tag?.note ?? '',
    why: cell ? 'cell' : alwaysRemove ? 'always' : 'tag',
    back: tag ? Number(tag.goesBack) : 1,
  };
  return draft('off', refdes, phaseBeforeHeat(context, refdes), figures, {
    parts: [refdes],
    source: cell ? LITHIUM : null,
    cautions: cell ? ['cells'] : [...(part?.coated ? (['coated'] as const) : []), ...ironCautions(part)],
    alert: tag === null ? 'warn' : null,
    // Cells first, before any iron is warm.
    rank: cell ? -1 : 0,
    ...(tag && fromTag(tag)),
  });
}

function coverStep(context: StepContext, { cover, tag, by }: CoverOff): StepDraft {
  const figures = { cover: cover.id, kind: cover.kind, fixing: cover.fixing, slot: tag?.traySlot ?? '' };
  const hot = by === 'hand' ? [] : (['burns'] as const);
  const more = { parts: [cover.id], cautions: ['covers', ...hot] as const, ...(tag && fromTag(tag)) };
  if (by === 'hand') return draft('cover-off', cover.id, 'before-heat', figures, more);
  if (by === 'lacking')
    return draft('can-off', cover.id, 'covers', { ...figures, lacking: 1 }, { ...more, alert: 'stop' });
  const run = context.runs.find(({ id }) => id === by.runId);
  return draft('can-off', cover.id, run ? phaseOf(run) : 'covers', { ...figures, lacking: 0 }, more);
}

/** Coated parts that are worked on or whose joints melt: at a site, coming off, or reflowed. */
export function coatedAtWork(context: StepContext): Part[] {
  const worked = new Set([
    ...context.plan.sites.map(({ target }) => target),
    ...partsOff(context).map(({ refdes }) => refdes),
    ...context.plan.tags.flatMap((tag) => (tag.kind === 'relocate' ? [tag.refdes, tag.toRefdes] : [])),
  ]);
  const melts = (part: Part) => (context.exposures.get(part.refdes)?.reflow ?? 'none') !== 'none';
  return context.board.parts.filter((part) => part.coated && (worked.has(part.refdes) || (part.fitted && melts(part))));
}

/** Names in full up to a number, then how many more. */
export function names(refdes: readonly string[], most = 12): { names: string; more: number; count: number } {
  const sorted = [...refdes].sort(naturalOrder);
  return { names: sorted.slice(0, most).join(', '), more: Math.max(0, sorted.length - most), count: sorted.length };
}

function coatingSteps(context: StepContext): StepDraft[] {
  const coated = coatedAtWork(context).map(({ refdes }) => refdes);
  if (coated.length === 0) return [];
  return [draft('coating-off', '', 'before-heat', names(coated), { parts: coated, cautions: ['coated', 'fumes'] })];
}

const bakeReadings = (celsius: number | null, hours: number | null): Expected[] => [
  { key: 'bake-c', name: 'bake-c', of: '', unit: 'C', predicted: celsius },
  { key: 'bake-h', name: 'bake-h', of: '', unit: 'h', predicted: hours },
];

/** The board by the weakest part that stays on; parts that go on by level and thickness, as the findings have it. */
function bakeSteps(context: StepContext): StepDraft[] {
  const board = foundFigures(context, 'bake-first');
  const steps = context.plan.sites.flatMap((site) => {
    const found = (['floor-life-over', 'floor-life-unknown', 'bake-before-every-use'] as const).flatMap(
      (code) => foundFigures(context, code, site.id) ?? [],
    )[0];
    if (!found) return [];
    const hours = Number(found.figures.at125H ?? 0);
    const why = found.code;
    return [
      draft(
        'bake-part',
        site.target,
        'before-heat',
        { ...found.figures, refdes: site.target, why },
        {
          parts: [site.target],
          expects: hours > 0 ? bakeReadings(125, hours) : bakeReadings(null, null),
          source: found.source,
          cautions: ['moisture', 'burns'],
          alert: found.weight === 'stop' ? 'stop' : 'warn',
        },
      ),
    ];
  });
  if (board) {
    const off = new Set(partsOff(context).map(({ refdes }) => refdes));
    const weakest = bakeFigures(context.board.parts.filter(({ refdes }) => !off.has(refdes)));
    const celsius = weakest.bakeC;
    steps.push(
      draft(
        'bake-board',
        '',
        'before-heat',
        { ...board.figures, ...weakest },
        {
          parts: weakest.weakest ? [weakest.weakest] : [],
          expects: bakeReadings(celsius > 0 ? celsius : null, null),
          source: board.source,
          cautions: ['moisture', 'burns'],
        },
      ),
    );
  }
  return steps;
}

const NOTICE_OF_GEL = ['gel-dries', 'gel-lasts'];

function shieldSteps(context: StepContext): StepDraft[] {
  const seen = new Set<string>();
  return tagsOfKind(context.plan, 'shield').flatMap((tag) => {
    if (seen.has(tag.refdes)) return [];
    seen.add(tag.refdes);
    const shield = shieldById(tag.shield);
    const gel = shield?.mass?.kind === 'gel';
    const stack = shield
      ? layersOf(shield, tag).map((layer) => (layer.kind === 'air-gap' ? `${layer.gapMm} mm gap` : layer.name))
      : [];
    const dries = (context.assessment?.evaluation.notices ?? []).find(
      ({ code, figures }) => NOTICE_OF_GEL.includes(code) && figures.refdes === tag.refdes,
    );
    const figures = {
      refdes: tag.refdes,
      shield: shield?.name ?? tag.shield,
      stack: stack.join(', then '),
      notGoodFor: shield?.notGoodFor ?? '',
      note: tag.note,
      ...(dries && {
        run: String(dries.figures.run),
        ...(dries.code === 'gel-dries' && { driesS: dries.figures.seconds }),
      }),
    };
    const cautions: CautionId[] = gel ? ['eyes'] : ['static'];
    return [
      draft(gel ? 'gel' : 'shield', tag.refdes, phaseBeforeHeat(context, tag.refdes), figures, {
        parts: [tag.refdes],
        source: gel ? GEL : (shield?.source ?? null),
        cautions,
        alert: shield ? null : 'warn',
        ...fromTag(tag),
      }),
    ];
  });
}

function watchSteps(context: StepContext): StepDraft[] {
  return tagsOfKind(context.plan, 'watchPoint').map((tag, rank) =>
    draft(
      'thermocouple',
      tag.id,
      tag.refdes ? phaseBeforeHeat(context, tag.refdes) : 'before-heat',
      { watch: tag.name, side: tag.side, on: tag.refdes ?? '', note: tag.note, x: tag.x, y: tag.y },
      {
        parts: tag.refdes ? [tag.refdes] : [],
        rank,
        ...fromTag(tag),
      },
    ),
  );
}

function benchSteps(context: StepContext): StepDraft[] {
  const { plan } = context;
  const heavy = (context.assessment?.actions ?? []).flatMap(({ action, refdes }) =>
    action === 'secure' ? [refdes] : [],
  );
  const fences = plan.sites.flatMap((site) =>
    site.fence
      ? [
          draft(
            'fence',
            site.id,
            phaseBeforeHeat(context, site.target),
            { refdes: site.target, marginMm: site.fence.marginMm, gapMm: site.fence.rimGapMm },
            {
              parts: [site.target],
              cautions: ['static'],
            },
          ),
        ]
      : [],
  );
  const off = plan.station.fumeExtraction === 'off';
  return [
    ...(heavy.length > 0
      ? [draft('secure', '', 'before-heat', names(heavy), { parts: heavy, cautions: ['underside-parts'] })]
      : []),
    ...fences,
    ...watchSteps(context),
    draft(
      'set-up',
      '',
      'before-heat',
      { turnDeg: plan.clampedTurnDeg, extraction: plan.station.fumeExtraction },
      {
        cautions: [...(off ? (['extraction-off'] as const) : []), 'fumes', 'eyes', 'burns'],
        alert: off ? 'warn' : null,
      },
    ),
  ];
}

/** Everything before the first gas: what comes off, what is baked, what goes on over the neighbours, the bench. */
export function beforeHeatSteps(context: StepContext): StepDraft[] {
  const heats = context.runs.length > 0;
  const off = [
    ...partsOff(context).map((one) => offStep(context, one)),
    ...[...context.covers.values()].map((one) => coverStep(context, one)),
  ];
  return [
    draft('power-off', '', 'before-heat', {}, { cautions: ['power-off', 'static'] }),
    ...off,
    ...coatingSteps(context),
    ...(heats ? [...bakeSteps(context), ...benchSteps(context)] : []),
    ...shieldSteps(context),
  ];
}
