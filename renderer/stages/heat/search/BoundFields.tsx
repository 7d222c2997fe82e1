import type { SearchBounds } from '../../../../shared-types/profile-search.ts';
import { searchSectionWords as words } from '../../../../shared-types/words/window/search.ts';
import { NumberEntry } from '../../../widgets/NumberEntry.tsx';
import { TemperatureEntry } from '../../../widgets/UnitEntry.tsx';

type Ranged = Exclude<keyof SearchBounds, 'toPeakS'>;
const ROWS: readonly { key: Ranged; is: 'celsius' | 'seconds' }[] = [
  { key: 'belowC', is: 'celsius' },
  { key: 'leadS', is: 'seconds' },
  { key: 'gasC', is: 'celsius' },
  { key: 'gasS', is: 'seconds' },
];
const ENDS = ['from', 'to'] as const;

type BoundProps = { bounds: SearchBounds; onChange: (bounds: SearchBounds) => void };

/** Between which figures the search may go. */
export function BoundFields({ bounds, onChange }: BoundProps) {
  return (
    <div className="bound-fields">
      <span />
      <span className="soft">{words.heads.from}</span>
      <span className="soft">{words.heads.to}</span>
      {ROWS.map(({ key, is }) => (
        <div key={key} className="bound-row">
          <span className="field-label">{words.bounds[key]}</span>
          {ENDS.map((end) => {
            const common = {
              ...{ label: words.bound(words.bounds[key], words.heads[end]), bare: true, value: bounds[key][end] },
              onChange: (value: number | null) =>
                value !== null && onChange({ ...bounds, [key]: { ...bounds[key], [end]: value } }),
            };
            return is === 'celsius' ? (
              <TemperatureEntry key={end} {...common} least={0} most={1000} />
            ) : (
              <NumberEntry key={end} {...common} unit="s" decimals={0} least={1} most={3600} />
            );
          })}
        </div>
      ))}
      <div className="bound-row">
        <span className="field-label">{words.bounds.toPeakS}</span>
        <span />
        <NumberEntry
          label={words.bounds.toPeakS}
          bare
          value={bounds.toPeakS}
          unit="s"
          decimals={0}
          least={1}
          most={7200}
          onChange={(toPeakS) => toPeakS !== null && onChange({ ...bounds, toPeakS })}
        />
      </div>
    </div>
  );
}

/** The first range whose ends are swapped, as a sentence; null: none is. */
export function swappedBound(bounds: SearchBounds): string | null {
  const swapped = ROWS.find(({ key }) => bounds[key].from > bounds[key].to);
  return swapped ? words.swapped(words.bounds[swapped.key]) : null;
}
