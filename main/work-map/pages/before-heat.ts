import type { Part } from '../../../shared-types/board.ts';
import { shieldById } from '../../../shared-types/library/shields.ts';
import { cautionsFor } from '../../../shared-types/words/cautions.ts';
import { ACTION_NAMES, actionReason } from '../../../shared-types/words/planning.ts';
import { thermocoupleSentence, thermocoupleWords } from '../../../shared-types/words/uncertainty.ts';
import { type Phrase, SHEET, TABLES } from '../../../shared-types/words/work-map.ts';
import { tagsOfKind } from '../facts/sheet-facts.ts';
import {
  designatorRanges,
  type ExceptionRow,
  exceptionsOf,
  naturalOrder,
  ordinaryParts,
  removalsByTray,
} from '../facts/work-lists.ts';
import { BODY, FIGURES, STRONG } from '../layout/flow.ts';
import type { Sheet } from '../layout/sheet.ts';
import { type Cell, type Column, drawTable } from '../layout/table.ts';
import { drawFindings } from './findings.ts';
import { drawPartsInAndOut, drawStraps } from './straps.ts';

const C = TABLES.columns;
const TAG = { title: C.tag, width: 46 };
const PART = { title: C.part, width: 58, style: { ...FIGURES, face: 'monoStrong' } as const };
const SIDE = { title: C.side, width: 52 };

/** Everything that happens before the gas: cautions, what comes off, shields, the other tags, exceptions. */
export function drawBeforeHeat(sheet: Sheet): void {
  sheet.flow.section(SHEET.beforeHeat, 200);
  drawFindings(sheet, SHEET.findings, ['stop', 'warn']);
  drawCautions(sheet);
  drawPlaces(sheet);
  drawExchanges(sheet);
  drawPartsInAndOut(sheet);
  drawRemovals(sheet);
  drawShields(sheet);
  drawRelocations(sheet);
  drawStraps(sheet);
  drawProgramming(sheet);
  drawExceptions(sheet);
}

function drawCautions(sheet: Sheet): void {
  const rows = cautionsFor(sheet.facts.assessment.cautions).map((caution): Cell[] => [caution.title, caution.sentence]);
  drawTable(
    sheet.flow,
    [
      { title: '', width: 92, style: STRONG },
      { title: '', share: 1 },
    ],
    rows,
    TABLES.cautions,
  );
}

const PLACES = 3;

/** Where thermocouples would tell most, on a plan that has none yet. */
function drawPlaces({ facts, flow }: Sheet): void {
  const places = facts.watchTags.length > 0 ? [] : (facts.assessment.thermocouples ?? []).slice(0, PLACES);
  const targetOf = (siteId: string | null) => facts.plan.sites.find((site) => site.id === siteId)?.target ?? '';
  drawTable(
    flow,
    [
      { title: '', share: 1 },
      { title: '', width: 24 },
    ],
    places.map((place): Cell[] => [
      thermocoupleSentence(place, targetOf(place.siteId), facts.words.figures.measures),
      { tick: true },
    ]),
    thermocoupleWords.title,
  );
}

/** Value and package of a part, for recognising it in the tray. */
const whatItIs = (part: Part | undefined): string =>
  part ? [part.value, part.package.name].filter((words) => words !== '').join(', ') : '';
const sideOf = (part: Part | undefined): string => (part ? SHEET.sides[part.side] : '');

function drawExchanges(sheet: Sheet): void {
  const { facts, flow } = sheet;
  const tags = tagsOfKind(facts.plan, 'replace');
  if (tags.length === 0) return;
  drawTable(
    flow,
    [TAG, PART, SIDE, { title: C.comesOff, share: 1 }, { title: C.goesOn, share: 1 }, { title: C.note, share: 1 }],
    tags.map((tag) => {
      const part = facts.partOf.get(tag.refdes);
      return [
        { tag: tag.kind, order: tag.order },
        tag.refdes,
        sideOf(part),
        tag.comesOff || whatItIs(part),
        tag.goesOn,
        tag.note,
      ];
    }),
    TABLES.exchanges,
  );
}

function drawRemovals(sheet: Sheet): void {
  const { facts, flow } = sheet;
  const tags = removalsByTray(facts);
  if (tags.length === 0) return;
  const back = tags.filter((tag) => tag.goesBack).length;
  flow.need(130);
  drawTable(
    flow,
    [
      { title: '', share: 1, style: STRONG },
      { title: '', width: 78, align: 'right' },
      { title: '', width: 44 },
      { title: '', width: 40, style: FIGURES },
      { title: '', width: 84, align: 'right' },
      { title: '', width: 44 },
      { title: '', width: 40, style: FIGURES },
    ],
    [
      [
        SHEET.removalCount(tags.length, back),
        SHEET.countOff,
        { blank: true },
        SHEET.of(tags.length),
        SHEET.countBack,
        { blank: true },
        SHEET.of(back),
      ],
    ],
    TABLES.removals,
  );
  drawTable(
    flow,
    [
      { title: C.slot, width: 40, style: { ...FIGURES, face: 'monoStrong' } },
      TAG,
      PART,
      SIDE,
      { title: C.what, share: 1.3 },
      { title: C.note, share: 1 },
      { title: C.off, width: 30 },
      { title: C.back, width: 50 },
    ],
    tags.map((tag) => {
      const part = facts.partOf.get(tag.refdes);
      const returned: Cell = tag.goesBack ? { tick: true } : SHEET.staysOff;
      return [
        tag.traySlot || SHEET.noSlot,
        { tag: tag.kind, order: tag.order },
        tag.refdes,
        sideOf(part),
        whatItIs(part),
        tag.note,
        { tick: true },
        returned,
      ];
    }),
  );
}

function drawShields(sheet: Sheet): void {
  const { facts, flow } = sheet;
  const tags = tagsOfKind(facts.plan, 'shield');
  if (tags.length === 0) return;
  drawTable(
    flow,
    [TAG, PART, SIDE, { title: C.shield, share: 1 }, { title: C.note, share: 1 }, { title: C.on, width: 30 }],
    tags.map((tag) => [
      { tag: tag.kind, order: tag.order },
      tag.refdes,
      sideOf(facts.partOf.get(tag.refdes)),
      shieldById(tag.shield)?.name ?? tag.shield,
      tag.note,
      { tick: true },
    ]),
    TABLES.shields,
  );
}

function drawRelocations(sheet: Sheet): void {
  const { facts, flow } = sheet;
  const tags = tagsOfKind(facts.plan, 'relocate');
  if (tags.length === 0) return;
  drawTable(
    flow,
    [
      TAG,
      { ...PART, title: C.from },
      { ...PART, title: C.to },
      SIDE,
      { title: C.note, share: 1 },
      { title: C.done, width: 38 },
    ],
    tags.map((tag) => [
      { tag: tag.kind, order: tag.order },
      tag.refdes,
      tag.toRefdes,
      sideOf(facts.partOf.get(tag.toRefdes) ?? facts.partOf.get(tag.refdes)),
      tag.note,
      { tick: true },
    ]),
    TABLES.relocations,
  );
}

function drawProgramming(sheet: Sheet): void {
  const { facts, flow } = sheet;
  const tags = tagsOfKind(facts.plan, 'reprogram');
  if (tags.length === 0) return;
  drawTable(
    flow,
    [TAG, PART, SIDE, { title: C.way, width: 90 }, { title: C.note, share: 1 }, { title: C.done, width: 38 }],
    tags.map((tag) => [
      { tag: tag.kind, order: tag.order },
      tag.refdes,
      sideOf(facts.partOf.get(tag.refdes)),
      tag.way === 'in-circuit' ? SHEET.inCircuit : SHEET.offAndBack,
      tag.note,
      { tick: true },
    ]),
    TABLES.programming,
  );
}

/** Exceptions as rows, what is still open first; everything ordinary as one line. */
function drawExceptions(sheet: Sheet): void {
  const { facts, flow } = sheet;
  const rows = exceptionsOf(facts);
  if (rows.length === 0) flow.heading(TABLES.exceptions);
  if (rows.length === 0) flow.paragraph(SHEET.noExceptions);
  for (const [title, done] of [
    [TABLES.open, false],
    [TABLES.planned, true],
  ] as const) {
    const listed = rows.filter(({ action }) => action.done === done).map((row) => exceptionCells(sheet, row));
    drawTable(flow, EXCEPTION_COLUMNS, listed, title);
  }
  const { count, reflowing } = ordinaryParts(facts);
  flow.paragraph(SHEET.ordinary(count, reflowing.length), STRONG);
  if (reflowing.length > 0) flow.paragraph(facts.words.reflowing(designatorRanges(reflowing)));
  const off = facts.assessment.evaluation.notEvaluated.filter(({ reason }) => reason === 'off-board');
  if (off.length > 0)
    flow.paragraph(SHEET.notEvaluated(designatorRanges(off.map(({ refdes }) => refdes).sort(naturalOrder))));
}

const EXCEPTION_COLUMNS: Column[] = [
  PART,
  { ...SIDE, width: 48 },
  { title: C.act, width: 84, style: STRONG },
  { title: C.margin, width: 58, align: 'right', style: FIGURES },
  { title: C.away, width: 60, align: 'right', style: FIGURES },
  { title: C.why, share: 1, style: BODY },
];

function exceptionCells(sheet: Sheet, { action, exposure }: ExceptionRow): Cell[] {
  const { figures } = sheet.facts.words;
  const reason: Phrase = [actionReason(action, figures.measures)];
  return [
    action.refdes,
    sideOf(sheet.facts.partOf.get(action.refdes)),
    ACTION_NAMES[action.action],
    exposure ? figures.signed(exposure.marginK) + figures.within(exposure.bandK) : '',
    exposure ? figures.length(Math.round(exposure.clearanceMm)) : '',
    reason,
  ];
}
