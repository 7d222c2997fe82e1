import { useUnits } from '../state/use-units.ts';
import { NumberEntry, type NumberEntryProps } from './NumberEntry.tsx';

type Props = Omit<NumberEntryProps, 'unit' | 'decimals'>;

/** A temperature kept in C, shown and read in the user's unit; whole degrees. */
export function TemperatureEntry({ value, least, most, onChange, ...rest }: Props) {
  const units = useUnits();
  const show = (celsius: number | undefined) => (celsius === undefined ? undefined : Math.round(units.showC(celsius)));
  return (
    <NumberEntry
      {...rest}
      value={value === null ? null : units.showC(value)}
      unit={units.temperatureSign}
      decimals={0}
      least={show(least)}
      most={show(most)}
      onChange={(shown) => onChange(shown === null ? null : units.readC(shown))}
    />
  );
}

/** A length kept in mm, shown and read in the user's unit. */
export function LengthEntry({ value, least, most, onChange, ...rest }: Props) {
  const units = useUnits();
  const mil = units.lengthSign === 'mil';
  const show = (mm: number | undefined) => (mm === undefined ? undefined : units.showMm(mm));
  return (
    <NumberEntry
      {...rest}
      value={value === null ? null : units.showMm(value)}
      unit={units.lengthSign}
      decimals={mil ? 0 : 2}
      least={show(least)}
      most={show(most)}
      onChange={(shown) => onChange(shown === null ? null : units.readMm(shown))}
    />
  );
}
