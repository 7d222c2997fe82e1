import { Search } from 'lucide-react';
import { useState } from 'react';
import { ComboBox, Group, Input, Label, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import { flushSync } from 'react-dom';
import { classById } from '../../../../shared-types/library/classes.ts';
import type { PackageOffer } from '../../../../shared-types/rules/package-offers.ts';
import { placeWords as words } from '../../../../shared-types/words/window/parts.ts';
import { readPlacing } from '../../../editing/placing.ts';
import { useDocument } from '../../../state/use-app.ts';
import { Icon } from '../../../widgets/Buttons.tsx';
import { useOwnPackages } from './use-own-packages.ts';

type Props = {
  id?: string;
  label: string;
  /** What is chosen now, shown while nothing is typed. */
  chosen: string;
  placeholder?: string;
  /** Designator that tips the scale among equals. */
  refdes: string;
  onChoose: (offer: PackageOffer, refdes: string | null, by: 'enter' | 'leave') => void;
};

/** Finds a package by typing; Enter takes the first, the arrows another one. */
export function PackageBox({ id, label, chosen, placeholder, refdes, onChoose }: Props) {
  const own = useOwnPackages();
  const { parts } = useDocument().board;
  const [typed, setTyped] = useState<string | null>(null);
  const read = typed === null ? { refdes: null, offers: [] } : readPlacing(typed, own, refdes, parts);
  const items = read.offers.map((offer, index) => ({ id: index, offer }));
  const take = (index: number, by: 'enter' | 'leave') => {
    const offer = read.offers[index];
    // Drawn at once: where the choice moves the focus on, leaving the field must not choose again.
    if (by === 'enter') flushSync(() => setTyped(null));
    else setTyped(null);
    if (offer) onChoose(offer, read.refdes, by);
  };
  return (
    <ComboBox
      className="package-box"
      items={items}
      inputValue={typed ?? chosen}
      onInputChange={(text) => text !== (typed ?? chosen) && setTyped(text)}
      selectedKey={null}
      onSelectionChange={(key) => key !== null && take(Number(key), 'enter')}
      allowsEmptyCollection={typed !== null && typed.trim() !== ''}
      allowsCustomValue
      menuTrigger="input"
    >
      <Label className="label">{label}</Label>
      <Group className="entry wide">
        <Icon of={Search} size={16} />
        <Input
          id={id}
          placeholder={placeholder ?? words.packageHint}
          spellCheck="false"
          onFocus={(event) => event.currentTarget.select()}
          onBlur={() => (typed?.trim() ? take(0, 'leave') : setTyped(null))}
          onKeyDown={(event) => {
            const active = event.currentTarget.getAttribute('aria-activedescendant');
            if (event.key === 'Enter' && !active && (items.length > 0 || typed === null)) {
              event.preventDefault();
              if (typed === null) onChooseAgain(event.currentTarget);
              else take(0, 'enter');
            }
            if (event.key === 'Escape') {
              setTyped(null);
              event.currentTarget.blur();
            }
          }}
        />
      </Group>
      <Popover className="popover" offset={4}>
        <ListBox<(typeof items)[number]>
          className="options"
          renderEmptyState={() => <p className="options-heading">{words.nothingFound}</p>}
        >
          {(item) => (
            <ListBoxItem id={item.id} textValue={item.offer.name} className="option package-option">
              <span>{item.offer.name}</span>
              <span className="more">
                {sizeOf(item.offer)} {words.from[item.offer.from] || classById(item.offer.classId).name}
              </span>
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}

/** Enter without typing: on with what is chosen already. */
const onChooseAgain = (input: HTMLInputElement): void => input.blur();

export const sizeOf = ({
  shape,
  lengthMm,
  widthMm,
  heightMm,
}: Omit<PackageOffer, 'name' | 'classId' | 'from'>): string =>
  shape === 'round' ? words.round(lengthMm, heightMm) : words.size(lengthMm, widthMm, heightMm);
