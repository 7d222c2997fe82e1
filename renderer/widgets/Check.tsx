import { Check as CheckMark, Minus } from 'lucide-react';
import type { ReactNode } from 'react';
import { Checkbox } from 'react-aria-components';
import './fields.css';

type CheckProps = {
  /** null: some are, some are not. */
  on: boolean | null;
  onChange: (on: boolean) => void;
  children: ReactNode;
};

export function Check({ on, onChange, children }: CheckProps) {
  return (
    <Checkbox className="check" isSelected={on === true} isIndeterminate={on === null} onChange={onChange}>
      <span className="box" aria-hidden="true">
        {on === null ? <Minus size={12} strokeWidth={2} /> : <CheckMark size={12} strokeWidth={2.5} />}
      </span>
      <span>{children}</span>
    </Checkbox>
  );
}
