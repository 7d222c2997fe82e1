import { readFileSync } from 'node:fs';
import { readTicketFile } from '../../main/files/ticket-file.ts';
import { evaluate } from '../../main/heat/evaluate.ts';
import { assess } from '../../main/planning/assess.ts';
import { loadSheetFonts } from '../../main/shells/fonts.ts';
import { renderWorkMap } from '../../main/work-map/render.ts';
import type { Assessment, Finding, PartAction } from '../../shared-types/evaluation.ts';
import type { TicketDocument } from '../../shared-types/plan.ts';
import type { Tag } from '../../shared-types/tags.ts';
import { findingLine } from '../../shared-types/words/findings.ts';
import { textOfPdf } from './pdf.ts';

/** A sample ticket as it lies on the shelf. */
export function ticketOf(name: string): TicketDocument {
  const read = readTicketFile(new Uint8Array(readFileSync(`sample-boards/${name}.hmticket`)), name);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value.document;
}

/** What evaluation and planning say of it. */
export function told({ board, plan }: TicketDocument, phase: 'coarse' | 'fine' = 'fine') {
  const evaluated = evaluate(board, plan, { phase });
  if (!evaluated.ok) throw new Error(JSON.stringify(evaluated.problem));
  const assessment: Assessment = assess(board, plan, evaluated.value);
  const run = (kind: string) => {
    const id = plan.heatRuns.find((one) => one.kind === kind)?.id;
    return evaluated.value.runs.find((one) => one.runId === id)!.targets[0];
  };
  return {
    assessment,
    removal: run('removal'),
    installation: run('installation'),
    codes: assessment.findings.map((found) => found.code),
    finding: (code: string): Finding | undefined => assessment.findings.find((found) => found.code === code),
    action: (refdes: string): PartAction => assessment.actions.find((one) => one.refdes === refdes)!,
  };
}

export const withTags = (ticket: TicketDocument, ...tags: Tag[]): TicketDocument => ({
  ...ticket,
  plan: { ...ticket.plan, tags: [...ticket.plan.tags, ...tags] },
});
export const linesOf = ({ findings }: Assessment): string => findings.map((found) => findingLine(found)).join('\n');

/** The printed sheet's pages as plain text, runs of spaces and line ends as one space. */
export async function sheetOf({ board, plan }: TicketDocument, assessment: Assessment): Promise<string[]> {
  const input = { board, plan, assessment, pictures: new Map(), fonts: loadSheetFonts() };
  const sheet = await renderWorkMap({ ...input, programVersion: '0', date: '2026-11-25T00:00:00Z' });
  return textOfPdf(sheet.bytes).map((page) => page.replace(/\s+/g, ' '));
}
