import type { Board, Cover } from '../../../../../shared-types/board.ts';
import type { Assessment } from '../../../../../shared-types/evaluation.ts';
import { SHIELDS } from '../../../../../shared-types/library/shields.ts';
import type { Plan } from '../../../../../shared-types/plan.ts';
import { planForTargets } from '../../../../../shared-types/rules/new-plan.ts';
import type { Tag } from '../../../../../shared-types/tags.ts';
import { boardWith, partNamed } from '../../../../support/boards.ts';
import { sequence } from '../../../main/work-map/made-up.ts';

const CLASSES = [
  'chip-capacitor',
  'led',
  'so',
  'electrolytic-medium',
  'coin-cell',
  'module-on-connector',
  'flash-memory',
  'connector-pbt',
];

/** A board of 24 parts with one or two cans, some of them coated. */
function randomBoard(random: () => number): Board {
  const parts = Array.from({ length: 24 }, (_, index) =>
    partNamed(`${'CDUEBAFJ'[index % 8]}${index + 1}`, {
      class: index === 2 ? 'bga' : index === 10 ? 'serial-memory' : CLASSES[index % 8],
      x: 8 + (index % 6) * 16,
      y: 10 + Math.floor(index / 6) * 20,
      package: { name: 'P', shape: 'rectangle', lengthMm: 6, widthMm: 6, heightMm: 1.2 },
      coated: random() < 0.2,
      fitted: random() < 0.95 || index === 2 || index === 10,
    }),
  );
  const covers = [0, 1].flatMap((index): Cover[] =>
    random() < 0.5
      ? []
      : [
          {
            ...{
              id: `SH${index + 1}`,
              kind: 'can',
              side: 'top',
              turn: 0,
              heightMm: 3,
              sheetMm: 0.2,
              material: 'tinned-steel',
            },
            ...{
              x: 8 + Math.floor(random() * 6) * 16,
              y: 10 + Math.floor(random() * 4) * 20,
              lengthMm: 20,
              widthMm: 14,
            },
            fixing: random() < 0.6 ? 'soldered' : 'clipped',
          } as Cover,
        ],
  );
  return { ...boardWith(parts), covers };
}

function randomTags(board: Board, taken: ReadonlySet<string>, random: () => number): Tag[] {
  const kinds = ['remove', 'relocate', 'shield', 'reprogram'] as const;
  return board.parts.flatMap((part, index): Tag[] => {
    if (!part.fitted || taken.has(part.refdes) || random() < 0.6) return [];
    const common = {
      id: `t${index}`,
      refdes: part.refdes,
      note: '',
      order: random() < 0.8 ? 1 + Math.floor(random() * 30) : null,
    };
    const kind = kinds[Math.floor(random() * 4)];
    if (kind === 'remove') return [{ ...common, kind, goesBack: random() < 0.7, traySlot: `A${index}` }];
    if (kind === 'relocate') return [{ ...common, kind, toRefdes: 'R99' }];
    if (kind === 'shield') return [{ ...common, kind, shield: SHIELDS[Math.floor(random() * SHIELDS.length)].id }];
    return [{ ...common, kind, way: random() < 0.5 ? 'in-circuit' : 'off-and-back' }];
  });
}

/** Advice and findings as planning makes them, as far as the steps look at them. */
function someAssessment(board: Board, plan: Plan, random: () => number): Assessment | null {
  if (random() < 0.3) return null;
  const place = { kind: 'board', id: 'board' } as const;
  const figures = { count: 9, aboveC: 200, bakeC: 90, hottestBakeC: 125, weakest: '', className: '', standsC: 105 };
  const life = {
    refdes: plan.sites[0].target,
    at125H: 9,
    at90H: 33,
    at40H: 312,
    level: '3',
    lifeH: 168,
    thicknessMm: 1.1,
  };
  const heavy = board.parts.filter(() => random() < 0.1);
  return {
    evaluation: { parts: [], runs: [], notices: [], notEvaluated: [] } as unknown as Assessment['evaluation'],
    actions: heavy.map(({ refdes }) => ({ refdes, action: 'secure', reason: '', figures: {}, done: false })),
    findings: [
      { code: 'bake-first', weight: 'note', place, figures, source: null },
      {
        code: 'floor-life-unknown',
        weight: 'warn',
        place: { kind: 'site', id: plan.sites[0].id },
        figures: life,
        source: null,
      },
    ],
    runNumbers: [],
    cautions: [],
  };
}

/** A ticket at random, the same for the same seed. */
export function randomTicket(seed: number): { board: Board; plan: Plan; assessment: Assessment | null } {
  const random = sequence(seed);
  const board = randomBoard(random);
  const targets = random() < 0.5 ? ['U3'] : ['U3', 'U11'];
  const known = targets.filter((refdes) => board.parts.some((part) => part.refdes === refdes));
  const plan = planForTargets(board, 'T-1', known);
  const cover = { ...plan.heatRuns[0], id: 'run-c', name: 'Can off', kind: 'cover-removal' as const };
  const heatRuns =
    random() < 0.5 ? [cover, ...plan.heatRuns] : random() < 0.2 ? [...plan.heatRuns, cover] : plan.heatRuns;
  const tags = [...plan.tags, ...randomTags(board, new Set(known), random)];
  const made = { ...plan, heatRuns, tags };
  return { board, plan: made, assessment: someAssessment(board, made, random) };
}
