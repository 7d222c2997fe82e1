import { ChevronDown } from 'lucide-react';
import { Button, Label, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';
import { Icon } from './Buttons.tsx';
import './fields.css';

export type ChoiceItem<T extends string> = { id: T; label: string; more?: string };

type ChoiceProps<T extends string> = {
  label: string;
  /** null: nothing chosen, or several different ones. */
  value: T | null;
  items: readonly ChoiceItem<T>[];
  placeholder?: string;
  bare?: boolean;
  stacked?: boolean;
  onChange: (value: T) => void;
};

/** One of a list that opens below. */
export function Choice<T extends string>({
  label,
  value,
  items,
  placeholder,
  bare,
  stacked,
  onChange,
}: ChoiceProps<T>) {
  return (
    <Select
      className={bare ? undefined : `field${stacked ? ' stacked' : ''}`}
      aria-label={bare ? label : undefined}
      selectedKey={value}
      placeholder={placeholder ?? ''}
      onSelectionChange={(key) => {
        if (key !== null && key !== value) onChange(key as T);
      }}
    >
      {!bare && <Label className="label">{label}</Label>}
      <Button className={`select-button${bare || stacked ? ' wide' : ''}`}>
        <SelectValue>{({ selectedText, defaultChildren }) => selectedText || defaultChildren}</SelectValue>
        <Icon of={ChevronDown} size={16} />
      </Button>
      <Popover className="popover" offset={2}>
        <ListBox className="options" items={items}>
          {(item) => (
            <ListBoxItem id={item.id} textValue={item.label} className="option">
              {item.label}
              {item.more && <span className="more">{item.more}</span>}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </Select>
  );
}
