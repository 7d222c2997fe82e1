import type { LucideIcon } from 'lucide-react';
import type { ReactNode } from 'react';
import {
  Button as BareButton,
  ToggleButton as BareToggle,
  ToggleButtonGroup,
  Tooltip,
  TooltipTrigger,
} from 'react-aria-components';
import './buttons.css';

export type ButtonLook = 'plain' | 'primary' | 'quiet' | 'link';

/** The one icon size and stroke of the window. */
export function Icon({ of: Drawn, size = 18 }: { of: LucideIcon; size?: number }) {
  return <Drawn size={size} strokeWidth={1.5} aria-hidden="true" />;
}

type ButtonProps = {
  look?: ButtonLook;
  small?: boolean;
  icon?: LucideIcon;
  disabled?: boolean;
  autoFocus?: boolean;
  /** What it does, where the word on it says too little out of its row. */
  label?: string;
  onPress?: () => void;
  children: ReactNode;
};

export function Button({ look = 'plain', small, icon, disabled, autoFocus, label, onPress, children }: ButtonProps) {
  return (
    <BareButton
      className={`button ${look}${small ? ' small' : ''}`}
      isDisabled={disabled}
      autoFocus={autoFocus}
      aria-label={label}
      onPress={onPress}
    >
      {icon && <Icon of={icon} size={small ? 16 : 18} />}
      {children}
    </BareButton>
  );
}

type IconButtonProps = {
  icon: LucideIcon;
  label: string;
  keys?: string;
  small?: boolean;
  disabled?: boolean;
  onPress: () => void;
};

/** A button that shows an icon only; its label and key stand in a tooltip. */
export function IconButton({ icon, label, keys, small, disabled, onPress }: IconButtonProps) {
  return (
    <WithTip label={label} keys={keys}>
      <BareButton
        className={`icon-button${small ? ' small' : ''}`}
        aria-label={label}
        isDisabled={disabled}
        onPress={onPress}
      >
        <Icon of={icon} size={small ? 16 : 18} />
      </BareButton>
    </WithTip>
  );
}

/** Gives a focusable child a tooltip with its label and key. */
export function WithTip({ label, keys, children }: { label: string; keys?: string; children: ReactNode }) {
  return (
    <TooltipTrigger delay={500} closeDelay={0}>
      {children}
      <Tooltip className="tooltip" offset={6}>
        {label}
        {keys && <kbd>{keys}</kbd>}
      </Tooltip>
    </TooltipTrigger>
  );
}

export type SegmentChoice<T extends string> = { id: T; label: string; icon?: LucideIcon; keys?: string };

type SegmentedProps<T extends string> = {
  label: string;
  value: T;
  choices: readonly SegmentChoice<T>[];
  iconsOnly?: boolean;
  onChange: (value: T) => void;
};

/** One of a few, all in view. */
export function Segmented<T extends string>({ label, value, choices, iconsOnly, onChange }: SegmentedProps<T>) {
  return (
    <ToggleButtonGroup
      className="segmented"
      aria-label={label}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[value]}
      onSelectionChange={(keys) => {
        const [next] = keys;
        if (next !== undefined && next !== value) onChange(next as T);
      }}
    >
      {choices.map((choice) =>
        iconsOnly || choice.keys ? (
          <WithTip key={choice.id} label={choice.label} keys={choice.keys}>
            <SegmentButton choice={choice} iconsOnly={iconsOnly} />
          </WithTip>
        ) : (
          <SegmentButton key={choice.id} choice={choice} />
        ),
      )}
    </ToggleButtonGroup>
  );
}

function SegmentButton<T extends string>({ choice, iconsOnly }: { choice: SegmentChoice<T>; iconsOnly?: boolean }) {
  return (
    <BareToggle id={choice.id} aria-label={choice.label}>
      {choice.icon && <Icon of={choice.icon} />}
      {!iconsOnly && choice.label}
    </BareToggle>
  );
}
