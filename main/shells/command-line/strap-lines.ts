import type { Board } from '../../../shared-types/board.ts';
import type { Plan } from '../../../shared-types/plan.ts';
import { groupFaults } from '../../../shared-types/rules/straps/check.ts';
import { armOf, codesOf, type DividerSpan, dividerSpan } from '../../../shared-types/rules/straps/divider.ts';
import { capacitySums } from '../../../shared-types/rules/straps/exchange.ts';
import type { StrapPlan } from '../../../shared-types/rules/straps/plan-straps.ts';
import { readGroup } from '../../../shared-types/rules/straps/read.ts';
import type { StrapGroup } from '../../../shared-types/straps.ts';
import {
  capacitySumWords,
  doubtWords,
  groupFaultWords,
  moveLine,
  movesLine,
  readingWords,
  refusalWords,
  spanVerdict,
  STRAP_LINES as words,
} from '../../../shared-types/words/straps.ts';

const settingWanted = (group: StrapGroup, plan: Plan) => {
  const wish = plan.straps.wanted.find((one) => one.groupId === group.id);
  return group.settings.find((setting) => setting.id === wish?.settingId);
};

type Window = { code: string; label: string; span: DividerSpan | null; verdict: string };

/** Worst case of every setting of a divider; empty for other groups. */
function windowsOf(group: StrapGroup): Window[] {
  if (group.kind !== 'divider') return [];
  return group.settings.map(({ code, label, top, bottom }) => {
    const span = dividerSpan(group, armOf(group, group.top, top), armOf(group, group.bottom, bottom));
    return { code, label, span, verdict: spanVerdict(code, span && codesOf(group, span)) };
  });
}

/** What every group says now and should say, then the moves; as lines to read. */
export function strapLines(board: Board, plan: Plan, moves: StrapPlan): string[] {
  const sums = capacitySums(board, plan);
  const groups = board.straps.flatMap((group) => {
    const reading = readGroup(board, plan.straps.ticked, group);
    const wanted = settingWanted(group, plan);
    return [
      words.title(group.name),
      words.now(readingWords(reading)),
      ...reading.doubts.map((doubt) => words.doubt(doubtWords(doubt))),
      wanted ? words.wanted(wanted.label, wanted.code) : words.noWish,
      ...sums.filter((sum) => sum.groupId === group.id).map((sum) => words.sum(capacitySumWords(sum))),
      ...groupFaults(board, group).map((fault) => words.fault(groupFaultWords(fault))),
      ...windowsOf(group).map(({ code, label, span, verdict }) => words.window(label, code, span, verdict)),
    ];
  });
  if (plan.straps.wanted.length === 0) return groups;
  return [
    ...groups,
    words.moves(movesLine(moves)),
    ...moves.moves.map((move, index) => words.move(index + 1, moveLine(move))),
    ...moves.refused.map((refusal) => words.refused(refusal.group, refusalWords(refusal))),
  ];
}

/** The same as plain JSON. Volts. */
export function strapJson(board: Board, plan: Plan, moves: StrapPlan): unknown {
  return {
    groups: board.straps.map((group) => {
      const reading = readGroup(board, plan.straps.ticked, group);
      return {
        id: group.id,
        name: group.name,
        code: reading.code,
        says: reading.settings.map((setting) => setting.label),
        doubts: reading.doubts.map(doubtWords),
        span: reading.span,
        wanted: settingWanted(group, plan)?.label ?? null,
        faults: groupFaults(board, group).map((fault) => ({ ...fault, sentence: groupFaultWords(fault) })),
        windows: windowsOf(group),
      };
    }),
    relocated: moves.relocated,
    added: moves.added,
    off: moves.off,
    moves: moves.moves,
    refused: moves.refused.map((refusal) => ({ ...refusal, sentence: refusalWords(refusal) })),
    capacity: capacitySums(board, plan),
  };
}
