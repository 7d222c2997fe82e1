import { useMemo } from 'react';
import { celsiusToFahrenheit, MM_PER_MIL } from '../../shared-types/units.ts';
import { type Measures, measuresIn } from '../../shared-types/words/measures.ts';
import { useAppState } from './use-app.ts';

export type Units = {
  measures: Measures;
  temperatureSign: '°C' | '°F';
  lengthSign: 'mm' | 'mil';
  /** A temperature in C as the user's figure, and back. */
  showC(celsius: number): number;
  readC(shown: number): number;
  /** A length in mm as the user's figure, and back. */
  showMm(mm: number): number;
  readMm(shown: number): number;
};

/** Figures in the units of the settings. Documents keep mm and C. */
export function useUnits(): Units {
  const { temperature, length } = useAppState((state) => ({
    temperature: state.settings.temperatureUnit,
    length: state.settings.lengthUnit,
  }));
  return useMemo(() => {
    const fahrenheit = temperature === 'F';
    const mil = length === 'mil';
    return {
      measures: measuresIn(temperature, length),
      temperatureSign: fahrenheit ? '°F' : '°C',
      lengthSign: length,
      showC: (celsius) => (fahrenheit ? celsiusToFahrenheit(celsius) : celsius),
      readC: (shown) => (fahrenheit ? (shown - 32) / 1.8 : shown),
      showMm: (mm) => (mil ? mm / MM_PER_MIL : mm),
      readMm: (shown) => (mil ? shown * MM_PER_MIL : shown),
    };
  }, [temperature, length]);
}
