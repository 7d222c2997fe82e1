import type { Board } from '../../shared-types/board.ts';
import type { Evaluation, PartAction } from '../../shared-types/evaluation.ts';
import { alloyById } from '../../shared-types/library/alloys.ts';
import { classById } from '../../shared-types/library/classes.ts';
import type { Plan } from '../../shared-types/plan.ts';
import type { CautionId } from '../../shared-types/words/cautions.ts';
import { BAKE_ABOVE_C } from './published.ts';

const PLASTICS = /^(connector-|tact-switch|slide-switch|relay|trimmer|plastic-optics)/;
const SOFTENS_C = 150;

function boardCautions(board: Board, plan: Plan): CautionId[] {
  const fitted = board.parts.filter((part) => part.fitted);
  const alloys = [...fitted.map((part) => part.alloy), ...plan.sites.flatMap((site) => [site.alloyOff, site.alloyOn])];
  const leaded = alloys.some((id) => alloyById(id)?.leadFree === false);
  const unknown = alloys.some((id) => alloyById(id) === undefined);
  const applies: [CautionId, boolean][] = [
    ['extraction-off', plan.station.fumeExtraction === 'off'],
    ['lead', leaded || unknown],
    ['unknown-alloy', unknown],
    ['cells', fitted.some((part) => ['coin-cell', 'lithium-cell', 'battery'].includes(classById(part.class).id))],
    ['coated', fitted.some((part) => part.coated)],
    ['underfill', fitted.some((part) => part.underfilled || part.edgeBonded)],
    ['covers', board.covers.some((cover) => cover.kind !== 'stiffener')],
    ['invented', board.source.invented],
  ];
  return applies.flatMap(([id, wanted]) => (wanted ? [id] : []));
}

/** The cautions that apply besides those printed on every sheet; ids of words/cautions.ts. */
export function cautionsOf(
  board: Board,
  plan: Plan,
  evaluation: Evaluation,
  actions: readonly PartAction[],
): CautionId[] {
  const classIds = new Map(board.parts.map((part) => [part.refdes, classById(part.class).id]));
  const hot = (aboveC: number) => evaluation.parts.filter((exposure) => exposure.body.maxC > aboveC);
  const kinds = hot(SOFTENS_C).map((exposure) => classIds.get(exposure.refdes) ?? '');
  const warm = hot(85).map((exposure) => classIds.get(exposure.refdes) ?? '');
  const applies: [CautionId, boolean][] = [
    ['electrolytics', warm.some((id) => id.startsWith('electrolytic') || id === 'polymer-capacitor')],
    ['plastics', kinds.some((id) => PLASTICS.test(id))],
    ['underside-parts', actions.some((action) => action.action === 'secure')],
    ['moisture', hot(BAKE_ABOVE_C.value).length > 0],
  ];
  return [...boardCautions(board, plan), ...applies.flatMap(([id, wanted]) => (wanted ? [id] : []))];
}
