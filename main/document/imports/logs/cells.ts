/** Numbers and times as loggers write them. */

/** A cell that a logger writes where it read nothing: empty, dashes, overload, not a number. */
const NOTHING = /^(|-+|—+|n\/?a|nan|null|o\.?l\.?|over|open|err(or)?|\?+|\*+)$/i;

export type Temperature = { value: number; unit: 'C' | 'F' | 'K' | null };

/** '231,4 °C', '231.4', '447 F'; null where nothing was read. `decimal` is the log's decimal sign. */
export function readTemperature(cell: string, decimal: '.' | ','): Temperature | null {
  const found = /^([+-]?[\d.,']+(?:e[+-]?\d+)?)\s*(?:°|º|deg\.?)?\s*([cfk])?$/i.exec(cell.trim());
  if (!found || NOTHING.test(cell.trim())) return null;
  const value = numberIn(found[1]!, decimal);
  const unit = found[2]?.toUpperCase() as Temperature['unit'] | undefined;
  return Number.isFinite(value) ? { value, unit: unit ?? null } : null;
}

export function numberIn(text: string, decimal: '.' | ','): number {
  const plain = decimal === ',' ? text.replace(/[.']/g, '').replace(',', '.') : text.replace(/[,']/g, '');
  return plain === '' ? Number.NaN : Number(plain);
}

const CLOCK = /(?:^|[\sT])(\d{1,3}):([0-5]?\d)(?::([0-5]?\d(?:[.,]\d+)?))?\s*([ap]m)?(?:Z|[+-]\d\d:?\d\d)?$/i;

/** Seconds of a time cell: plain numbers times `unitS`, m:s or h:m:s, or a date with a clock; null where there is none. */
export function readTime(cell: string, decimal: '.' | ',', unitS: number, twoParts: 'm:s' | 'h:m'): number | null {
  const text = cell.trim();
  const clock = CLOCK.exec(text);
  if (clock) {
    const [, first, second, third, half] = clock;
    const whole = text.length > clock[0].trim().length;
    if (third === undefined) {
      const [major, minor] = [Number(first), Number(second)];
      return twoParts === 'm:s' && !whole ? major * 60 + minor : major * 3600 + minor * 60;
    }
    const hour = half ? (Number(first) % 12) + (/p/i.test(half) ? 12 : 0) : Number(first);
    return hour * 3600 + Number(second) * 60 + Number(third.replace(',', '.'));
  }
  const plain = /^([+-]?[\d.,']+)\s*(?:s|sec|min|ms)?$/i.exec(text);
  const value = plain ? numberIn(plain[1]!, decimal) : Number.NaN;
  return Number.isFinite(value) ? value * unitS : null;
}

/** Seconds of one unit named in a heading: 'Time (min)', 't [ms]'; seconds where none is named. */
export function timeUnitOf(heading: string): number {
  if (/\bms\b|milli/i.test(heading)) return 0.001;
  if (/\bmin(ute)?s?\b/i.test(heading)) return 60;
  return /\bh(ou)?rs?\b/i.test(heading) ? 3600 : 1;
}

/** Temperature unit named in a heading. */
export function unitOfHeading(heading: string): Temperature['unit'] {
  const found =
    /(?:°|º|deg\.?\s*|[[(/,]\s*)([cfk])\b/i.exec(heading) ?? /\b(celsius|fahrenheit|kelvin)\b/i.exec(heading);
  return found ? (found[1]![0]!.toUpperCase() as 'C' | 'F' | 'K') : null;
}

/** C from a temperature in the unit of its cell, else of its heading, else C. */
export function toCelsius({ value, unit }: Temperature, heading: Temperature['unit']): number {
  const of = unit ?? heading ?? 'C';
  if (of === 'F') return ((value - 32) * 5) / 9;
  return of === 'K' ? value - 273.15 : value;
}
