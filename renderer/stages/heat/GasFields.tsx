import { useState } from 'react';
import { USUAL_LEVELS } from '../../../shared-types/library/stations.ts';
import type { Station } from '../../../shared-types/plan.ts';
import type { OutletReading } from '../../../shared-types/rules/outlet.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { stationWords as words } from '../../../shared-types/words/window/station.ts';
import { setStation } from '../../editing/station.ts';
import { useApp } from '../../state/use-app.ts';
import { Choice } from '../../widgets/Choice.tsx';
import { TemperatureEntry } from '../../widgets/UnitEntry.tsx';
import { LevelTable } from './LevelTable.tsx';

const flows = (['levels', 'litres'] as const).map((id) => ({ id, label: words.flowChoices[id] }));
const outlets = (['dial', 'measured', 'outlet'] as const).map((id) => ({ id, label: words.outletChoices[id] }));

/** How much gas and how hot, as the station says it and as it was measured. */
export function GasFields({ station }: { station: Station }) {
  const app = useApp();
  const set = (fields: Partial<Omit<Station, 'nozzle' | 'preheater'>>) =>
    app.bench.apply(editLabels.station, (document) => setStation(document, fields));
  const levels = station.flowLevels.length > 0;
  return (
    <>
      <h4 className="sub-head">{words.gas}</h4>
      <Choice
        label={words.flows}
        value={levels ? 'levels' : 'litres'}
        items={flows}
        onChange={(how) => set({ flowLevels: how === 'levels' ? USUAL_LEVELS : [] })}
      />
      {levels && <LevelTable levels={station.flowLevels} />}
      <OutletFields station={station} set={set} />
    </>
  );
}

type Set = (fields: Partial<Pick<Station, 'gasReads' | 'outletReadings'>>) => void;

function OutletFields({ station, set }: { station: Station; set: Set }) {
  const { gasReads, outletReadings } = station;
  const [asked, setAsked] = useState(false);
  const measured = outletReadings.length > 0 || asked;
  const value = gasReads === 'outlet' ? 'outlet' : measured ? 'measured' : 'dial';
  return (
    <>
      <Choice
        label={words.outlet}
        stacked
        value={value}
        items={outlets}
        onChange={(how) => {
          setAsked(how === 'measured');
          set({ gasReads: how === 'outlet' ? 'outlet' : 'setting', ...(how === 'dial' && { outletReadings: [] }) });
        }}
      />
      {value === 'measured' && <OutletTable readings={outletReadings} set={set} />}
    </>
  );
}

const ROWS = 3;
type Draft = { settingC: number | null; outletC: number | null };
const USUAL_SETTINGS_C = [250, 350, 450];

/** The rows to fill: what was read, then usual settings without a reading. */
function padded(readings: readonly OutletReading[]): Draft[] {
  const open = USUAL_SETTINGS_C.slice(readings.length).map((settingC) => ({ settingC, outletC: null }));
  return [...readings, ...open].slice(0, Math.max(ROWS, readings.length));
}

const wholeOf = (rows: readonly Draft[]): OutletReading[] =>
  rows
    .filter((row): row is OutletReading => row.settingC !== null && row.outletC !== null)
    .sort((a, b) => a.settingC - b.settingC);

/** Three settings and what the bare thermocouple read; a row counts once both figures are there. */
function OutletTable({ readings, set }: { readings: readonly OutletReading[]; set: Set }) {
  const [drafts, setDrafts] = useState(() => padded(readings));
  // Undo, or another station, brings readings that were not typed here.
  const rows = JSON.stringify(wholeOf(drafts)) === JSON.stringify(readings) ? drafts : padded(readings);
  const change = (index: number, fields: Partial<Draft>) => {
    const next = rows.map((row, at) => (at === index ? { ...row, ...fields } : row));
    setDrafts(next);
    set({ outletReadings: wholeOf(next) });
  };
  return (
    <>
      <p className="empty">{words.outletHow}</p>
      <div className="outlet-table">
        <span className="head">{words.settingHead}</span>
        <span className="head">{words.outletHead}</span>
        {rows.map((row, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is nothing but its place
          <OutletRow key={index} row={row} index={index} change={(fields) => change(index, fields)} />
        ))}
      </div>
    </>
  );
}

type RowProps = { row: Draft; index: number; change: (fields: Partial<Draft>) => void };

function OutletRow({ row, index, change }: RowProps) {
  return (
    <>
      <TemperatureEntry
        bare
        label={words.setting(index + 1)}
        value={row.settingC}
        least={0}
        most={1000}
        onChange={(settingC) => settingC !== null && change({ settingC })}
      />
      <TemperatureEntry
        bare
        label={words.outletAt(index + 1)}
        value={row.outletC}
        least={0}
        most={1000}
        emptyIs="–"
        onChange={(outletC) => change({ outletC })}
      />
    </>
  );
}
