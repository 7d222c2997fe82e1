import { useState } from 'react';
import { seriesOf } from '../../../shared-types/rules/e-series.ts';
import { type MarkingReading, readMarking } from '../../../shared-types/rules/markings.ts';
import { ohmsWords } from '../../../shared-types/words/straps.ts';
import { strapWords as words } from '../../../shared-types/words/window/straps.ts';
import { Fold } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';

/** Reads a marking as it is typed: the value, or both readings. */
export function MarkingFold() {
  const [marking, setMarking] = useState('');
  const readings = readMarking(marking);
  return (
    <Fold title={words.markings}>
      <TextEntry
        label={words.part.marking}
        value={marking}
        placeholder={words.markingHint}
        longest={20}
        mono
        onType={setMarking}
        onDone={setMarking}
      />
      <div role="status">
        {marking.trim() !== '' && readings.length === 0 && <p>{words.noMarking}</p>}
        <ul className="strap-readings">
          {readings.map((reading) => (
            <li key={`${reading.system} ${reading.ohms}`}>
              <b className="figure">{ohmsWords(reading.ohms)}</b> <span className="soft">{more(reading)}</span>
            </li>
          ))}
        </ul>
        {readings.length > 1 && <p>{words.twoReadings}</p>}
      </div>
      <p className="soft">{words.unmarked}</p>
    </Fold>
  );
}

function more({ system, ohms, tolerancePercent }: MarkingReading): string {
  const series = ohms > 0 ? seriesOf(ohms) : null;
  return [
    words.systems[system],
    tolerancePercent === null ? '' : `± ${tolerancePercent} %`,
    ohms === 0 ? '' : series ? words.series(series) : words.noSeries,
  ]
    .filter(Boolean)
    .join(', ');
}
