import {
  COLUMN_MEANINGS,
  LENGTH_WORDS,
  type Meaning,
  SIDE_MEANINGS,
  type TableChoice,
} from '../../../../shared-types/import-choices.ts';
import type { ImportedTable } from '../../../../shared-types/import-report.ts';
import { BY_WORDS, SEPARATOR_WORDS } from '../../../../shared-types/words/imports.ts';
import {
  meaningWords,
  unitWords,
  importDialogWords as words,
} from '../../../../shared-types/words/window/import-dialog.ts';
import type { Imported } from '../../../state/app-state.ts';
import { Choice } from '../../../widgets/Choice.tsx';
import { Section } from '../../../widgets/Section.tsx';
import type { Choose } from './choose.ts';

const meanings = COLUMN_MEANINGS.map((id) => ({ id, label: meaningWords[id] }));
const units = LENGTH_WORDS.map((id) => ({ id, label: unitWords[id] }));
const sideMeanings = SIDE_MEANINGS.map((id) => ({ id, label: words.sideMeanings[id] }));
const sides = (['top', 'bottom'] as const).map((id) => ({ id, label: words.sides[id] }));

type Props = { imported: Imported; choose: Choose };

/** The tables by kind: first rows, what each column means and why, unit, side. */
export function TableSections({ imported, choose }: Props) {
  const { tables } = imported;
  const kinds = [...new Set(tables.map(({ shape }) => shape))];
  return kinds.map((shape) => {
    const alike = tables.filter((table) => table.shape === shape);
    return <TableSection key={shape} tables={alike} imported={imported} choose={choose} />;
  });
}

function TableSection({ tables, imported, choose }: Props & { tables: readonly ImportedTable[] }) {
  const [table] = tables;
  const { shape } = table;
  const rows = tables.reduce((sum, one) => sum + one.rows, 0);
  const before = imported.choices.tables?.[shape] ?? {};
  const change = (fields: TableChoice) =>
    choose({ tables: { ...imported.choices.tables, [shape]: { ...before, ...fields } } });
  const more = tables.length > 1 ? ` ${words.more(tables.length - 1)}` : '';
  return (
    <Section title={`${words.table(table.file, rows)}${more}`}>
      <p className="soft">{factsOf(table)}</p>
      <ColumnTable table={table} onChange={(columns) => change({ columns })} />
      <Choice
        label={`${words.unit} (${BY_WORDS[table.unitFrom]})`}
        value={table.unit as (typeof LENGTH_WORDS)[number]}
        items={units}
        onChange={(unit) => change({ unit })}
      />
      {wordsOf(tables).map(({ word, side, count, chosen }) => (
        <Choice
          key={word}
          label={words.sideWord(word, count, chosen, side !== null)}
          value={side ?? 'top'}
          items={sideMeanings}
          onChange={(next) => change({ sideWords: { ...before.sideWords, [word]: next } })}
        />
      ))}
      {tables
        .filter(({ sideFrom }) => sideFrom !== 'column')
        .map(({ file, sideFrom }) => (
          <Choice
            key={file}
            label={`${tables.length > 1 ? words.sideOf(file) : words.side} (${words.sideBy(sideFrom)})`}
            value={sideShown(imported, file)}
            items={sides}
            onChange={(side) => choose({ sides: { ...imported.choices.sides, [file]: side } })}
          />
        ))}
    </Section>
  );
}

/** The side words of tables of one kind, each once. */
function wordsOf(tables: readonly ImportedTable[]): ImportedTable['sideWords'] {
  const all = new Map<string, ImportedTable['sideWords'][number]>();
  for (const use of tables.flatMap(({ sideWords }) => sideWords)) {
    const known = all.get(use.word);
    all.set(use.word, known ? { ...known, count: known.count + use.count } : use);
  }
  return [...all.values()];
}

/** The side chosen for a file; before that what its name says. */
function sideShown({ choices, read }: Imported, file: string): 'top' | 'bottom' | null {
  const chosen = choices.sides?.[file];
  if (chosen || !read) return chosen ?? null;
  const { report } = read;
  if (report.counts.bottom === 0) return 'top';
  return report.counts.top === 0 ? 'bottom' : null;
}

function factsOf({ columns, separator, encoding, decimalComma }: ImportedTable): string {
  const facts = [words.columnsBy(columns[0]?.by ?? 'content'), SEPARATOR_WORDS[separator] ?? separator, encoding];
  return [...facts, ...(decimalComma ? [words.decimalComma] : [])].join(', ');
}

function ColumnTable({ table, onChange }: { table: ImportedTable; onChange: (columns: Meaning[]) => void }) {
  const now = table.columns.map(({ meaning }) => (meaning ?? 'plain') as Meaning);
  const put = (index: number, meaning: Meaning) =>
    // A meaning stands once: the column that had it before is not used any more.
    onChange(now.map((one, at) => (at === index ? meaning : one === meaning && meaning !== 'plain' ? 'plain' : one)));
  return (
    <div className="column-table scrolls">
      <table>
        <thead>
          <tr>
            {table.columns.map(({ heading }, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place
              <th key={index} data-unused={now[index] === 'plain' ? '' : undefined}>
                <Choice
                  bare
                  label={words.columnOf(heading)}
                  value={now[index]}
                  items={meanings}
                  onChange={(meaning) => put(index, meaning)}
                />
                <span className="heading">{heading}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.sample.map((cells, row) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
            <tr key={row}>
              {table.columns.map((_, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its place
                <td key={index} data-unused={now[index] === 'plain' ? '' : undefined}>
                  {cells[index]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
