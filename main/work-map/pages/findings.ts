import type { Finding } from '../../../shared-types/evaluation.ts';
import { findingWords, weightWord } from '../../../shared-types/words/findings.ts';
import { STRONG } from '../layout/flow.ts';
import type { Sheet } from '../layout/sheet.ts';
import { type Cell, drawTable } from '../layout/table.ts';

/** What planning found, by weight. What stops or warns gets a box to tick; notes are only read. */
export function drawFindings(sheet: Sheet, title: string, weights: readonly Finding['weight'][]): void {
  const found = weights.flatMap((weight) =>
    sheet.facts.assessment.findings.filter((finding) => finding.weight === weight),
  );
  if (found.length === 0) return;
  const act = !weights.includes('note');
  drawTable(
    sheet.flow,
    act
      ? [
          { title: '', width: 58, style: STRONG },
          { title: '', share: 1 },
          { title: '', width: 24 },
        ]
      : [{ title: '', share: 1 }],
    found.map((finding): Cell[] => {
      const { what, todo } = findingWords(finding, sheet.facts.words.figures.measures);
      const words = `${what}. ${todo}`;
      return act ? [weightWord(finding.weight), words, { tick: true }] : [words];
    }),
    title,
  );
}
