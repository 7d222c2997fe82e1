import { alloyById } from '../../../shared-types/library/alloys.ts';
import { mostlyUnmarked } from '../../../shared-types/rules/markings.ts';
import { capacitySums, differenceOf } from '../../../shared-types/rules/straps/exchange.ts';
import { planStraps, type StrapMove } from '../../../shared-types/rules/straps/plan-straps.ts';
import { readGroup } from '../../../shared-types/rules/straps/read.ts';
import type { ExchangedPart } from '../../../shared-types/straps.ts';
import {
  capacitySumWords,
  capacityWords,
  differenceWords,
  doubtWords,
  MOVE_NAMES,
  movePart,
  movesLine,
  readingWords,
  refusalWords,
  WAITS,
  STRAP_SHEET as words,
} from '../../../shared-types/words/straps.ts';
import { asSentence } from '../../../shared-types/words/window/sentence.ts';
import { SHEET } from '../../../shared-types/words/work-map.ts';
import type { SheetFacts } from '../facts/sheet-facts.ts';
import { BODY, FIGURES, STRONG } from '../layout/flow.ts';
import type { Sheet } from '../layout/sheet.ts';
import { type Cell, drawTable } from '../layout/table.ts';

const MONO_STRONG = { ...FIGURES, face: 'monoStrong' } as const;

/** What each group says now and must say, then the moves to tick off, then what was refused. */
export function drawStraps(sheet: Sheet): void {
  const { facts, flow } = sheet;
  const { board, plan } = facts;
  if (board.straps.length === 0) return;
  const work = planStraps(board, plan);
  const groups = board.straps.map((group): Cell[] => {
    const reading = readGroup(board, plan.straps.ticked, group);
    const wish = plan.straps.wanted.find((one) => one.groupId === group.id);
    const wanted = group.settings.find((setting) => setting.id === wish?.settingId);
    return [
      group.name,
      [readingWords(reading), ...reading.doubts.map(doubtWords)].join('. '),
      wanted ? `${wanted.code}: ${wanted.label}` : words.nothingWanted,
    ];
  });
  drawTable(
    flow,
    [
      { title: words.group, width: 90, style: STRONG },
      { title: words.now, share: 1 },
      { title: words.wanted, share: 1 },
    ],
    groups,
    words.title,
  );
  for (const sum of capacitySums(board, plan))
    flow.paragraph(asSentence(capacitySumWords(sum)), sum.agrees === false ? STRONG : BODY);
  for (const refusal of work.refused) flow.paragraph(words.refused(refusal.group, refusalWords(refusal)), STRONG);
  if (plan.straps.wanted.length === 0) return;
  drawTable(
    flow,
    [
      { title: words.place, width: 26, align: 'right', style: FIGURES },
      { title: words.act, width: 66, style: STRONG },
      { title: words.from, width: 58, style: MONO_STRONG },
      { title: words.to, width: 58, style: MONO_STRONG },
      { title: words.side, width: 50 },
      { title: words.part, width: 76, style: FIGURES },
      { title: words.check, share: 1 },
      { title: words.done, width: 38 },
    ],
    work.moves.map((move, index) => moveCells(facts, move, index + 1)),
    words.movesTitle(movesLine(work)),
  );
}

function moveCells(facts: SheetFacts, move: StrapMove, place: number): Cell[] {
  const part = facts.partOf.get(move.to ?? move.from ?? '');
  const unmarked = part && mostlyUnmarked(part.package.lengthMm, part.package.widthMm);
  const check = [move.waits ? WAITS : '', move.kind === 'off' ? '' : unmarked ? words.measured : words.marking]
    .filter(Boolean)
    .join('; ');
  return [
    String(place),
    MOVE_NAMES[move.kind],
    move.from ?? words.stock,
    move.to ?? '–',
    part ? SHEET.sides[part.side] : '',
    movePart(move),
    check,
    { tick: true },
  ];
}

/** Parts in and out at each site, and how they differ. */
export function drawPartsInAndOut(sheet: Sheet): void {
  const { plan } = sheet.facts;
  const rows = plan.sites.flatMap((site): Cell[][] => {
    const exchange = plan.exchanges.find((one) => one.siteId === site.id);
    if (!exchange) return [];
    const agrees = [words.agrees[exchange.agrees], exchange.agreesNote].filter(Boolean).join(': ');
    const differs = [...differenceWords(differenceOf(exchange)), agrees].map(asSentence).join(' ');
    return [[site.target, partWords(exchange.off), partWords(exchange.on), differs]];
  });
  drawTable(
    sheet.flow,
    [
      { title: words.at, width: 46, style: MONO_STRONG },
      { title: words.off, share: 1 },
      { title: words.on, share: 1 },
      { title: words.difference, share: 1.1 },
    ],
    rows,
    words.exchanges,
  );
}

function partWords(part: ExchangedPart): string {
  const each = part.capacity ? capacityWords(part.capacity) : '';
  const amount = part.count > 1 ? `${part.count} x ${each || words.pieces}` : each;
  const alloy = alloyById(part.ballAlloy);
  return [
    part.name,
    part.marking && words.marked(part.marking),
    amount,
    alloy && words.balls(alloy.name),
    part.heightMm !== null && words.height(part.heightMm),
    part.powerW !== null && words.power(part.powerW),
  ]
    .filter(Boolean)
    .join(', ');
}
