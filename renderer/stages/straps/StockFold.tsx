import { Plus, X } from 'lucide-react';
import { parseTolerance } from '../../../shared-types/rules/resistance.ts';
import type { StrapStock } from '../../../shared-types/straps.ts';
import { strapEdits, strapWords as words } from '../../../shared-types/words/window/straps.ts';
import { putStock } from '../../editing/straps.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { Button, IconButton } from '../../widgets/Buttons.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { Fold } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';

/** Resistors at hand. */
export function StockFold() {
  const app = useApp();
  const { stock } = useDocument().plan.straps;
  const add = () =>
    app.bench.apply(strapEdits.stock, (before) =>
      putStock(before, stock.length, { ...words.newStock, tolerancePercent: null, count: null }),
    );
  return (
    <Fold title={words.stock} summary={stock.map((entry) => entry.value).join(', ')}>
      {stock.length > 0 && (
        <table className="strap-stock">
          <thead>
            <tr>
              {Object.values(words.stockHead).map((head) => (
                <th key={head}>{head}</th>
              ))}
              <th />
            </tr>
          </thead>
          <tbody>
            {stock.map((entry, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: an entry is nothing but its place
              <StockRow key={index} entry={entry} index={index} />
            ))}
          </tbody>
        </table>
      )}
      <Button icon={Plus} small onPress={add}>
        {words.addStock}
      </Button>
    </Fold>
  );
}

function StockRow({ entry, index }: { entry: StrapStock; index: number }) {
  const app = useApp();
  const put = (next: StrapStock | null) => app.bench.apply(strapEdits.stock, (before) => putStock(before, index, next));
  const label = (what: string) => words.stockCell(entry.value, what);
  return (
    <tr>
      <td>
        <TextEntry
          bare
          mono
          needed
          label={label(words.stockHead.value)}
          value={entry.value}
          longest={50}
          onDone={(value) => put({ ...entry, value })}
        />
      </td>
      <td>
        <TextEntry
          bare
          mono
          label={label(words.stockHead.size)}
          value={entry.size}
          longest={30}
          onDone={(size) => put({ ...entry, size })}
        />
      </td>
      <td>
        <TextEntry
          bare
          mono
          label={label(words.stockHead.tolerance)}
          value={entry.tolerancePercent === null ? '' : String(entry.tolerancePercent)}
          longest={10}
          onDone={(text) => put({ ...entry, tolerancePercent: parseTolerance(text) })}
        />
      </td>
      <td>
        <NumberEntry
          bare
          label={label(words.stockHead.count)}
          value={entry.count}
          least={0}
          most={1e6}
          decimals={0}
          emptyIs={words.enough}
          onChange={(count) => put({ ...entry, count })}
        />
      </td>
      <td>
        <IconButton icon={X} small label={words.removeStock(entry.value)} onPress={() => put(null)} />
      </td>
    </tr>
  );
}
