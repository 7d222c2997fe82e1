import { ClipboardPaste, Pencil, Plus, X } from 'lucide-react';
import { Button as BareButton, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { groupFaults, isNote } from '../../../shared-types/rules/straps/check.ts';
import { draftOf, emptyDraft } from '../../../shared-types/rules/straps/draft.ts';
import { capacitySums } from '../../../shared-types/rules/straps/exchange.ts';
import { readGroup } from '../../../shared-types/rules/straps/read.ts';
import type { StrapGroup, StrapKind } from '../../../shared-types/straps.ts';
import { capacitySumWords, doubtWords, groupFaultWords, readingWords } from '../../../shared-types/words/straps.ts';
import { asSentence } from '../../../shared-types/words/window/sentence.ts';
import { strapEdits, strapWords as words } from '../../../shared-types/words/window/straps.ts';
import { removeStrapGroup, wantSetting } from '../../editing/straps.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { Button, Icon, IconButton } from '../../widgets/Buttons.tsx';
import { Choice } from '../../widgets/Choice.tsx';
import { Section } from '../../widgets/Section.tsx';
import type { EditedGroup } from './GroupDialog.tsx';

type Props = { onEdit: (edited: EditedGroup) => void; onPaste: () => void };

/** The groups: what each says now, and what it must say. */
export function GroupSection({ onEdit, onPaste }: Props) {
  const { straps } = useDocument().board;
  return (
    <Section title={words.groups} count={straps.length > 0 ? straps.length : undefined}>
      {straps.length === 0 && <p className="empty">{words.noGroups}</p>}
      {straps.map((group) => (
        <GroupBlock key={group.id} group={group} onEdit={onEdit} />
      ))}
      <div className="strap-buttons">
        <Button icon={ClipboardPaste} small onPress={onPaste}>
          {words.pasteTable}
        </Button>
        <AddMenu onAdd={(kind) => onEdit({ draft: emptyDraft(kind), before: null })} />
      </div>
    </Section>
  );
}

const KINDS = (Object.keys(words.kindsLong) as StrapKind[]).map((id) => ({ id, label: words.kindsLong[id] }));

function AddMenu({ onAdd }: { onAdd: (kind: StrapKind) => void }) {
  return (
    <MenuTrigger>
      <BareButton className="button plain small">
        <Icon of={Plus} size={16} />
        {words.add}
      </BareButton>
      <Popover className="popover" placement="bottom start">
        <Menu className="menu" items={KINDS} onAction={(id) => onAdd(id as StrapKind)}>
          {(kind) => (
            <MenuItem id={kind.id} className="menu-item">
              {kind.label}
            </MenuItem>
          )}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

const NOTHING = '';

function GroupBlock({ group, onEdit }: { group: StrapGroup; onEdit: Props['onEdit'] }) {
  const app = useApp();
  const { board, plan } = useDocument();
  const reading = readGroup(board, plan.straps.ticked, group);
  const wish = plan.straps.wanted.find((one) => one.groupId === group.id)?.settingId ?? NOTHING;
  // What is wrong with the wanted setting stands above, where it is refused.
  const wished = group.settings.find((setting) => setting.id === wish)?.label;
  const faults = groupFaults(board, group).filter(
    (fault) => !isNote(fault) && !('setting' in fault && fault.setting === wished),
  );
  const sum = capacitySums(board, plan).find((one) => one.groupId === group.id);
  const items = [
    { id: NOTHING, label: words.none },
    ...group.settings.map(({ id, label, code }) => ({ id, label, more: code })),
  ];
  return (
    <div className="strap-group">
      <header>
        <b>{group.name}</b>
        <span className="ends">
          <IconButton
            icon={Pencil}
            small
            label={words.edit(group.name)}
            onPress={() => onEdit({ draft: draftOf(group), before: group })}
          />
          <IconButton
            icon={X}
            small
            label={words.remove(group.name)}
            onPress={() => app.bench.apply(strapEdits.removeGroup, (before) => removeStrapGroup(before, group.id))}
          />
        </span>
      </header>
      <dl className="lines">
        <dt>{words.now}</dt>
        <dd>{readingWords(reading)}</dd>
      </dl>
      <ul className="strap-faults">
        {reading.doubts.map((doubt) => (
          <li key={JSON.stringify(doubt)}>{asSentence(doubtWords(doubt))}</li>
        ))}
        {faults.map((fault) => (
          <li key={JSON.stringify(fault)}>{asSentence(groupFaultWords(fault))}</li>
        ))}
      </ul>
      <Choice
        label={words.wanted}
        value={wish}
        items={items}
        onChange={(id) =>
          app.bench.apply(strapEdits.want, (before) => wantSetting(before, group.id, id === NOTHING ? null : id))
        }
      />
      {sum && (
        <p className="capacity-sum" data-loud={sum.agrees === false ? '' : undefined}>
          {asSentence(capacitySumWords(sum))}
        </p>
      )}
    </div>
  );
}
