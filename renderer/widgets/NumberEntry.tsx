import { useState } from 'react';
import { Group, Input, Label, NumberField } from 'react-aria-components';
import './fields.css';
import { leave } from './leave.ts';

export type NumberEntryProps = {
  label: string;
  /** null: not known, shown empty; `onChange` may give null back only when `emptyIs` says what that means. */
  value: number | null;
  unit?: string;
  least?: number;
  most?: number;
  decimals?: number;
  step?: number;
  /** Words shown while there is no figure. */
  emptyIs?: string;
  /** Label for assistive technology only: the figure stands in a table. */
  bare?: boolean;
  autoFocus?: boolean;
  onChange: (value: number | null) => void;
};

/** A figure with its unit. It counts when the field is left or Enter is pressed. */
export function NumberEntry(props: NumberEntryProps) {
  const { label, value, unit, least, most, decimals = 1, step, emptyIs, bare, onChange } = props;
  // Esc brings the figure back: the field is made anew.
  const [version, setVersion] = useState(0);
  const shown = value === null ? NaN : round(value, decimals);
  const take = (next: number) => {
    if (Number.isNaN(next)) {
      if (emptyIs !== undefined && value !== null) onChange(null);
      return;
    }
    if (next !== shown) onChange(next);
  };
  return (
    <NumberField
      key={version}
      className={bare ? undefined : 'field'}
      aria-label={bare ? label : undefined}
      value={shown}
      minValue={least}
      maxValue={most}
      step={step}
      formatOptions={{ maximumFractionDigits: decimals, useGrouping: false }}
      onChange={take}
      // The wheel scrolls the panel; a figure under the pointer must not change unnoticed.
      isWheelDisabled
      onKeyDown={(event) => {
        if (event.key === 'Escape') setVersion((before) => before + 1);
        // The field hands on the browser's own event on some paths, which goes on by itself.
        else if (event.key !== 'Enter' && 'continuePropagation' in event) event.continuePropagation();
      }}
      onKeyUp={(event) => event.key === 'Enter' && leave(event.target)}
    >
      {!bare && <Label className="label">{label}</Label>}
      <Group className="entry number">
        <Input placeholder={emptyIs} autoFocus={props.autoFocus} />
        {unit && <span className="unit">{unit}</span>}
      </Group>
    </NumberField>
  );
}

function round(value: number, decimals: number): number {
  const factor = 10 ** decimals;
  return Math.round(value * factor) / factor;
}
