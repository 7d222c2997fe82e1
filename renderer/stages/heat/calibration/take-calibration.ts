import type { Calibration, Station } from '../../../../shared-types/plan.ts';
import { calibrateWords as words } from '../../../../shared-types/words/window/calibrate.ts';
import { setStation } from '../../../editing/station.ts';
import type { App } from '../../../state/app.ts';

const MOST_KEPT = 50;

/** A station can be kept for other tickets when it has a name and there is room, or it is kept already. */
export function canKeep(stations: readonly Station[], name: string): boolean {
  return name.trim() !== '' && (stations.length < MOST_KEPT || stations.some((one) => one.name === name));
}

/** Puts the calibration into the ticket's station, one undo step; `keep`: other tickets find the station by its name. */
export function takeCalibration(app: App, calibration: Calibration, keep: boolean): void {
  app.bench.apply(words.taken, (document) => setStation(document, { calibration }));
  const { ticket, settings } = app.store.get();
  const station = ticket?.document.plan.station;
  if (!keep || !station) return;
  const others = settings.stations.filter((one) => one.name !== station.name);
  app.changeSettings({ stations: [...others, station] });
  app.bench.hint(words.kept(station.name));
}
