import { Search } from 'lucide-react';
import { useMemo, useState } from 'react';
import { ComboBox, Group, Input, ListBox, ListBoxItem, Popover } from 'react-aria-components';
import type { Part } from '../../shared-types/board.ts';
import { classById } from '../../shared-types/library/classes.ts';
import { frameWords as words } from '../../shared-types/words/window/frame.ts';
import { FIND_BOX_ID } from '../state/element-ids.ts';
import { showPart } from '../state/show-part.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { byDesignator } from '../table/table-rows.ts';
import { Icon } from '../widgets/Buttons.tsx';

const MOST_SHOWN = 12;
const noParts: readonly Part[] = [];

/** Finds a part by its designator: exact ones first, then those that begin with what was typed. */
export function FindBox() {
  const app = useApp();
  const parts = useAppState((state) => state.ticket?.document.board.parts ?? noParts);
  const [text, setText] = useState('');
  const found = useMemo(() => findParts(parts, text), [parts, text]);
  const choose = (refdes: string) => {
    showPart(app, refdes);
    setText('');
    (document.activeElement as HTMLElement | null)?.blur();
  };
  return (
    <ComboBox
      className="find-box"
      aria-label={words.findPart}
      items={found}
      inputValue={text}
      onInputChange={setText}
      selectedKey={null}
      onSelectionChange={(key) => key !== null && choose(String(key))}
      allowsEmptyCollection={text.trim() !== ''}
      allowsCustomValue
      menuTrigger="input"
    >
      <Group className="entry">
        <Icon of={Search} size={16} />
        <Input
          id={FIND_BOX_ID}
          placeholder={words.findPart}
          spellCheck="false"
          onKeyDown={(event) => {
            if (event.key === 'Enter' && found[0] && !event.currentTarget.getAttribute('aria-activedescendant'))
              choose(found[0].refdes);
            if (event.key === 'Escape') event.currentTarget.blur();
          }}
        />
      </Group>
      <Popover className="popover" offset={4}>
        <ListBox<Part>
          className="options"
          renderEmptyState={() => <p className="options-heading">{words.nothingFound}</p>}
        >
          {(part) => (
            <ListBoxItem id={part.refdes} textValue={part.refdes} className="option">
              <span className="mono">{part.refdes}</span>
              <span className="more">{part.value || classById(part.class).name}</span>
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}

export function findParts(parts: readonly Part[], text: string): Part[] {
  const wanted = text.trim().toLowerCase();
  if (wanted === '') return [];
  const rank = (part: Part) => {
    const name = part.refdes.toLowerCase();
    if (name === wanted) return 0;
    return name.startsWith(wanted) ? 1 : 2;
  };
  return parts
    .filter((part) => part.refdes.toLowerCase().includes(wanted))
    .toSorted((a, b) => rank(a) - rank(b) || byDesignator(a.refdes, b.refdes))
    .slice(0, MOST_SHOWN)
    .map((part) => ({ ...part, id: part.refdes }));
}
