import { useRef, useState } from 'react';
import { Group, Input, Label, TextArea, TextField } from 'react-aria-components';
import './fields.css';
import { leave } from './leave.ts';

export type TextEntryProps = {
  label: string;
  value: string;
  placeholder?: string;
  longest?: number;
  lines?: number;
  stacked?: boolean;
  bare?: boolean;
  mono?: boolean;
  autoFocus?: boolean;
  /** At least one character: an emptied field goes back to what it was. */
  needed?: boolean;
  /** Hears every keystroke, for keeping what is typed; `onDone` then ends the gesture. */
  onType?: (value: string) => void;
  onDone: (value: string) => void;
  /** Esc: what was typed goes. */
  onDrop?: () => void;
};

/** Words. They count as they are typed where `onType` is given, and when the field is left or Enter is pressed. */
export function TextEntry(props: TextEntryProps) {
  const { label, value, bare, stacked, lines = 1 } = props;
  const [typed, setTyped] = useState<string | null>(null);
  // What is typed counts once: leaving by Esc must not be taken for done by the blur that follows.
  const open = useRef(false);
  const end = () => {
    if (!open.current || typed === null) return;
    open.current = false;
    setTyped(null);
    if (props.needed && typed.trim() === '') props.onDone(value);
    else props.onDone(typed);
  };
  const drop = () => {
    if (!open.current) return;
    open.current = false;
    setTyped(null);
    props.onDrop?.();
  };
  const Box = lines > 1 ? TextArea : Input;
  return (
    <TextField
      className={bare ? undefined : `field${stacked ? ' stacked' : ' text'}`}
      aria-label={bare ? label : undefined}
      value={typed ?? value}
      maxLength={props.longest}
      onChange={(next) => {
        open.current = true;
        setTyped(next);
        if (!(props.needed && next.trim() === '')) props.onType?.(next);
      }}
      onBlur={end}
      onKeyDown={(event) => {
        if (event.key === 'Escape') drop();
        else if (event.key === 'Enter' && lines === 1) end();
        else {
          event.continuePropagation();
          return;
        }
        leave(event.target);
      }}
    >
      {!bare && <Label className="label">{label}</Label>}
      <Group className={`entry${stacked || bare ? ' wide' : ''}${lines > 1 ? ' area' : ''}`}>
        <Box
          className={props.mono ? 'mono' : undefined}
          placeholder={props.placeholder}
          autoFocus={props.autoFocus}
          rows={lines > 1 ? lines : undefined}
        />
      </Group>
    </TextField>
  );
}
