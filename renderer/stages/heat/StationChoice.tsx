import { STATION_PRESETS } from '../../../shared-types/library/stations.ts';
import type { Station } from '../../../shared-types/plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { stationWords as words } from '../../../shared-types/words/window/station.ts';
import { setStation, takeStation } from '../../editing/station.ts';
import { useApp, useAppState, useTypedEdit } from '../../state/use-app.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';

const MOST_SAVED = 50;

/** Which station: a saved one, or one to begin from; and keeping this one under its name. */
export function StationChoice({ station }: { station: Station }) {
  const app = useApp();
  const saved = useAppState((state) => state.settings.stations);
  const name = useTypedEdit(
    `${editLabels.station} name`,
    (value) => (document) => setStation(document, { name: value }),
  );
  const items = [
    ...saved.map((one, index) => ({ id: `saved ${index}`, label: one.name })),
    ...STATION_PRESETS.map((one, index) => ({ id: `preset ${index}`, label: one.name, more: words.toBeginFrom })),
  ];
  const choose = (id: string) => {
    const [list, index] = id.split(' ');
    const chosen = (list === 'saved' ? saved : STATION_PRESETS)[Number(index)];
    if (chosen) app.bench.apply(editLabels.station, (document) => takeStation(document, chosen));
  };
  const others = saved.filter((one) => one.name !== station.name);
  const isKept = saved.some((one) => one === station || sameStation(one, station));
  const named = station.name.trim().length > 0;
  return (
    <>
      <Choice
        label={words.choose}
        stacked
        value={null}
        placeholder={words.choosePlaceholder}
        items={items}
        onChange={choose}
      />
      <TextEntry label={words.name} value={station.name} longest={200} {...name} />
      <div className="station-acts">
        <Button
          small
          disabled={!named || isKept || others.length >= MOST_SAVED}
          onPress={() => app.changeSettings({ stations: [...others, station] })}
        >
          {others.length < saved.length ? words.keepAgain : words.keep}
        </Button>
        {others.length < saved.length && (
          <Button look="quiet" small onPress={() => app.changeSettings({ stations: others })}>
            {words.forget}
          </Button>
        )}
        <span className="soft">{isKept ? words.kept : ''}</span>
      </div>
    </>
  );
}

const sameStation = (a: Station, b: Station): boolean => JSON.stringify(a) === JSON.stringify(b);
