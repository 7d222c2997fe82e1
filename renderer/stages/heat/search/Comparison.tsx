import type { SearchPoint } from '../../../../shared-types/profile-search.ts';
import { searchSectionWords as words } from '../../../../shared-types/words/window/search.ts';
import { type Units, useUnits } from '../../../state/use-units.ts';

type Row = { label: string; read: (point: SearchPoint) => string };

function rowsFor({ targets }: SearchPoint, m: Units['measures']): Row[] {
  const { rows } = words;
  const targetOf = (point: SearchPoint, siteId: string) => point.targets.find((one) => one.siteId === siteId);
  return [
    { label: rows.belowC, read: ({ belowC }) => m.temperature(belowC) },
    { label: rows.leadS, read: ({ leadS }) => m.seconds(leadS) },
    { label: rows.gasC, read: ({ gasC }) => m.temperature(gasC) },
    { label: rows.gasS, read: ({ gasS }) => `${gasS.join(' + ')} s` },
    { label: rows.toPeakS, read: ({ toPeakS }) => m.seconds(toPeakS) },
    ...targets.flatMap(({ siteId, refdes }): Row[] => [
      { label: rows.coldest(refdes), read: (point) => m.temperature(targetOf(point, siteId)?.coldestC ?? Number.NaN) },
      { label: rows.above(refdes), read: (point) => m.seconds(targetOf(point, siteId)?.allAboveS ?? Number.NaN) },
    ]),
    { label: rows.rise, read: ({ riseKPerS }) => m.rate(riseKPerS) },
    { label: rows.margin, read: ({ marginK }) => marginWords(marginK, m) },
    { label: rows.worst, read: ({ worst }) => worst?.refdes ?? '–' },
  ];
}

const marginWords = (marginK: number | null, m: Units['measures']): string => {
  if (marginK === null) return '–';
  return `${marginK < 0 ? '−' : ''}${m.difference(marginK)}`;
};

/** The present profile and the picked one, figure by figure; what differs stands out. */
export function Comparison({ present, picked, title }: { present: SearchPoint; picked: SearchPoint; title: string }) {
  const { measures } = useUnits();
  return (
    <table className="target-table comparison">
      <thead>
        <tr>
          <th />
          <th>{words.present}</th>
          <th>{title}</th>
        </tr>
      </thead>
      <tbody>
        {rowsFor(present, measures).map(({ label, read }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td>{read(present)}</td>
            <td className={read(present) === read(picked) ? 'soft' : undefined}>{read(picked)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
