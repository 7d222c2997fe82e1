import type { Finding } from '../../../shared-types/evaluation.ts';
import { alloyById } from '../../../shared-types/library/alloys.ts';
import { groupFaults, isNote } from '../../../shared-types/rules/straps/check.ts';
import { capacitySums, differenceOf } from '../../../shared-types/rules/straps/exchange.ts';
import { planStraps } from '../../../shared-types/rules/straps/plan-straps.ts';
import { capacitySumWords, groupFaultWords, movesLine, refusalWords } from '../../../shared-types/words/straps.ts';
import type { PlanningContext } from '../context.ts';
import { finding, onBoard, onSite } from './make.ts';

/** Groups that cannot be used as they are described: one finding each, the first fault and how many more. */
function groupFindings({ board }: PlanningContext): Finding[] {
  return board.straps.flatMap((group) => {
    const faults = groupFaults(board, group).filter((fault) => !isNote(fault));
    if (faults.length === 0) return [];
    const figures = { group: group.name, reason: groupFaultWords(faults[0]), more: faults.length - 1 };
    return [finding('strap-group-faulty', 'warn', onBoard, figures, null)];
  });
}

function moveFindings({ board, plan }: PlanningContext): Finding[] {
  const { moves, refused, relocated, added, off } = planStraps(board, plan);
  const refusals = refused.map((refusal) =>
    finding('strap-refused', 'warn', onBoard, { group: refusal.group, reason: refusalWords(refusal) }, null),
  );
  const open = movesLine({ relocated, added, off });
  return [...refusals, ...(moves.length > 0 ? [finding('straps-move', 'note', onBoard, { moves: open }, null)] : [])];
}

/** Sums of capacities beside the labels of the settings. */
function sumFindings({ board, plan }: PlanningContext): Finding[] {
  return capacitySums(board, plan).flatMap((sum) => {
    if (sum.agrees === true) return [];
    const figures = { group: sum.group, setting: sum.setting, reason: capacitySumWords(sum) };
    return [
      finding(
        sum.agrees === false ? 'capacity-differs' : 'capacity-unknown',
        sum.agrees === false ? 'warn' : 'note',
        onBoard,
        figures,
        null,
      ),
    ];
  });
}

/** Parts that go on beside those that come off. */
function exchangeFindings({ plan }: PlanningContext): Finding[] {
  return plan.sites.flatMap((site) => {
    const exchange = plan.exchanges.find((one) => one.siteId === site.id);
    if (!exchange) return [];
    const place = onSite(site.id);
    const about = { refdes: site.target };
    const found: Finding[] = [];
    if (exchange.agrees === 'differs')
      found.push(finding('incoming-differs', 'warn', place, { ...about, reason: exchange.agreesNote }, null));
    const balls = alloyById(exchange.on.ballAlloy);
    const joints = alloyById(site.alloyOn);
    if (balls && joints && balls.id !== joints.id)
      found.push(finding('balls-differ', 'warn', place, { ...about, balls: balls.name, joints: joints.name }, null));
    const { heightMm } = differenceOf(exchange);
    if (heightMm !== null && Math.abs(heightMm) >= 0.005)
      found.push(finding('incoming-height', 'note', place, { ...about, heightMm }, null));
    return found;
  });
}

/** What straps and exchanged parts ask for. */
export const strapFindings = (context: PlanningContext): Finding[] =>
  [moveFindings, groupFindings, sumFindings, exchangeFindings].flatMap((check) => check(context));
