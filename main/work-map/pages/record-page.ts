import { SHEET, TABLES } from '../../../shared-types/words/work-map.ts';
import type { Sheet } from '../layout/sheet.ts';
import { drawTable } from '../layout/table.ts';
import { drawFindings } from './findings.ts';
import { drawPowerSteps } from './steps.ts';

const C = TABLES.columns;

/** The line to sign stays on its page. */
const SIGN_OFF_KEPT = 60;

/** Order and notes in full, what the evaluation wants known, then the checks at power-on and the line to sign. */
export function drawRecordPage(sheet: Sheet, orderCut: boolean): void {
  const { flow, facts } = sheet;
  const { order, notes } = facts.plan.ticket;
  flow.startPage(SHEET.record);
  if (orderCut) {
    flow.heading(SHEET.orderAndNotes);
    flow.paragraph(order.trim());
  }
  if (notes.trim()) {
    flow.heading(SHEET.notes);
    flow.paragraph(notes.trim());
  }
  drawFindings(sheet, TABLES.notes, ['note']);
  drawPowerSteps(sheet);
  drawSignature(sheet);
}

/** One line to sign: each step has its own box. */
function drawSignature(sheet: Sheet): void {
  drawTable(
    sheet.flow,
    [
      { title: C.name, share: 1 },
      { title: C.when, width: 140 },
      { title: C.signature, width: 180 },
    ],
    [[{ blank: true }, { blank: true }, { blank: true }]],
    SHEET.signOff,
    SIGN_OFF_KEPT,
  );
}
