import { SHEET, TABLES } from '../../../shared-types/words/work-map.ts';
import type { Sheet } from '../layout/sheet.ts';
import { type Cell, drawTable } from '../layout/table.ts';
import { drawFindings } from './findings.ts';

const C = TABLES.columns;

/** The lines to sign stay on one page. */
const SIGN_OFF_KEPT = 200;

/** Order and notes in full, what the evaluation wants known, then the lines to sign. */
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
  drawTable(
    flow,
    [
      { title: C.step, share: 1 },
      { title: C.name, width: 110 },
      { title: C.when, width: 100 },
      { title: C.signature, width: 110 },
    ],
    SHEET.signOffSteps.map((step): Cell[] => [step, { blank: true }, { blank: true }, { blank: true }]),
    SHEET.signOff,
    SIGN_OFF_KEPT,
  );
}
