import { OF_STATION } from '../../../../shared-types/rules/station-terms.ts';
import type { CalibrationAnswer } from '../../../../shared-types/study.ts';
import { BAND_90 } from '../../../../shared-types/uncertainty.ts';
import { calibrationWords } from '../../../../shared-types/words/calibration.ts';
import { calibrateWords as words } from '../../../../shared-types/words/window/calibrate.ts';

type Term = CalibrationAnswer['terms'][number];

const WIDTH = 168;
const HEIGHT = 20;
/** Prior deviations that fit into a bar to each side. */
const REACH = 2.6;

/** Each term before and after: terms of the station, which travel, apart from those of the board, which do not. */
export function TermTable({ terms }: { terms: readonly Term[] }) {
  const groups = [
    { title: words.station, terms: terms.filter(({ id }) => OF_STATION.has(id)) },
    { title: words.board, terms: terms.filter(({ id }) => !OF_STATION.has(id)) },
  ];
  return (
    <table className="term-table">
      <thead>
        <tr>
          <th>{words.termHeads.term}</th>
          <th className="figure-head">{words.termHeads.found}</th>
          <th>{words.termHeads.narrowed}</th>
        </tr>
      </thead>
      {groups.map((group) => (
        <tbody key={group.title}>
          <tr>
            <th colSpan={3} scope="rowgroup" className="group">
              {group.title}
            </th>
          </tr>
          {group.terms.map((term) => (
            <TermRow key={term.id} term={term} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

function TermRow({ term }: { term: Term }) {
  const { id, step, sigma, priorSigma, told } = term;
  const percent = String(Math.round((sigma / priorSigma) * 100));
  return (
    <tr>
      <th scope="row">{words.means(id)}</th>
      <td className="figure">
        {calibrationWords.found(id, step)} <span className="soft">{calibrationWords.spread(id, BAND_90 * sigma)}</span>
      </td>
      <td>
        <span className="term-bar">
          <TermBar term={term} label={words.barLabel(percent)} />
          <span className={told ? 'soft' : 'untold'}>{told ? words.narrowedTo(percent) : words.untold}</span>
        </span>
      </td>
    </tr>
  );
}

/** What was believed as an open bar, what is believed now as a filled one with a stroke at its middle. */
function TermBar({ term: { step, sigma, priorSigma, told }, label }: { term: Term; label: string }) {
  const x = (deviations: number) =>
    WIDTH / 2 + (Math.max(-REACH, Math.min(REACH, deviations)) / REACH) * (WIDTH / 2 - 2);
  const middle = step / priorSigma;
  const half = (BAND_90 * sigma) / priorSigma;
  return (
    <svg width={WIDTH} height={HEIGHT} role="img" aria-label={label}>
      <line className="axis" x1={x(0)} x2={x(0)} y1={0} y2={HEIGHT} />
      <rect className="prior" x={x(-BAND_90)} y={3} width={x(BAND_90) - x(-BAND_90)} height={HEIGHT - 6} />
      <rect
        className={told ? 'found' : 'found faint'}
        x={x(middle - half)}
        y={6}
        width={Math.max(2, x(middle + half) - x(middle - half))}
        height={HEIGHT - 12}
      />
      <line className="middle" x1={x(middle)} x2={x(middle)} y1={2} y2={HEIGHT - 2} />
    </svg>
  );
}
