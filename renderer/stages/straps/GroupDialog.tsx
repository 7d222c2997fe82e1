import { useState } from 'react';
import { groupFaults, isNote } from '../../../shared-types/rules/straps/check.ts';
import {
  columnsOf,
  type DraftFault,
  type DraftTable,
  groupOfDraft,
  placesOf,
  type StrapDraft,
  TABLES_OF,
} from '../../../shared-types/rules/straps/draft.ts';
import type { StrapGroup, StrapKind } from '../../../shared-types/straps.ts';
import { groupFaultWords } from '../../../shared-types/words/straps.ts';
import { frameWords } from '../../../shared-types/words/window/frame.ts';
import { asSentence } from '../../../shared-types/words/window/sentence.ts';
import { strapEdits, strapWords as words } from '../../../shared-types/words/window/straps.ts';
import { nextGroupId, putStrapGroup } from '../../editing/straps.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { Button, Segmented } from '../../widgets/Buttons.tsx';
import { Check } from '../../widgets/Check.tsx';
import { Dialogue } from '../../widgets/Dialogue.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { GridTable } from './GridTable.tsx';
import { SpanTable } from './SpanTable.tsx';

/** What the editor works on: a draft and the group it comes from, if there is one. */
export type EditedGroup = { draft: StrapDraft; before: StrapGroup | null };

const headsOf = (draft: StrapDraft, table: DraftTable): string[] => {
  if (table !== 'settings') return [...words.heads[table]];
  const more = draft.kind === 'divider' ? words.heads.dividerSettings : placesOf(draft);
  return [...words.heads.settings, ...more];
};

const KINDS = (Object.keys(words.kinds) as StrapKind[]).map((id) => ({ id, label: words.kinds[id] }));

/** The editor of a group: its tables as in a spreadsheet. What is kept is one undo step. */
export function GroupDialog({ edited, onClose }: { edited: EditedGroup; onClose: () => void }) {
  const app = useApp();
  const document = useDocument();
  const [draft, setDraft] = useState(edited.draft);
  const id = edited.before?.id ?? nextGroupId(document);
  const { group, faults } = groupOfDraft(draft, id, document.board, edited.before);
  const keep = () => {
    if (!group) return;
    app.bench.apply(strapEdits.putGroup, (before) => putStrapGroup(before, group));
    onClose();
  };
  const set = (fields: Partial<StrapDraft>) => setDraft((before) => ({ ...before, ...fields }));
  return (
    <Dialogue
      title={words.dialogTitle(draft.name)}
      size="widest"
      onClose={onClose}
      footer={
        <>
          <Button onPress={onClose}>{frameWords.cancel}</Button>
          <Button look="primary" disabled={!group} onPress={keep}>
            {words.save}
          </Button>
        </>
      }
    >
      <div className="strap-head">
        <TextEntry
          label={words.name}
          value={draft.name}
          longest={100}
          autoFocus={draft.name === ''}
          onType={(name) => set({ name })}
          onDone={(name) => set({ name })}
        />
        <TextEntry
          label={words.describes}
          value={draft.describes}
          placeholder={words.describesHint}
          longest={500}
          mono
          onType={(describes) => set({ describes })}
          onDone={(describes) => set({ describes })}
        />
        <Segmented label={words.kind} value={draft.kind} choices={KINDS} onChange={(kind) => set({ kind })} />
      </div>
      {draft.kind === 'divider' && <DividerFields draft={draft} set={set} />}
      <div className="strap-tables">
        {TABLES_OF[draft.kind].map((table) => (
          <section key={table} data-table={table}>
            <h3>{words.tables[table]}</h3>
            <GridTable
              table={table}
              heads={headsOf(draft, table)}
              rows={draft.tables[table].map((row) => row.slice(0, columnsOf(draft, table)))}
              faults={faults.filter((fault) => fault.table === table)}
              onChange={(rows) => set({ tables: { ...draft.tables, [table]: rows } })}
            />
          </section>
        ))}
      </div>
      <p className="soft">{words.gridHint}</p>
      {group ? <GroupFaults group={group} /> : <DraftFaults draft={draft} faults={faults} />}
      {group?.kind === 'divider' && <SpanTable group={group} />}
    </Dialogue>
  );
}

function DividerFields({ draft, set }: { draft: StrapDraft; set: (fields: Partial<StrapDraft>) => void }) {
  return (
    <div className="strap-divider">
      <TextEntry
        label={words.top}
        value={draft.top}
        longest={64}
        mono
        onType={(top) => set({ top })}
        onDone={(top) => set({ top })}
      />
      <TextEntry
        label={words.bottom}
        value={draft.bottom}
        longest={64}
        mono
        onType={(bottom) => set({ bottom })}
        onDone={(bottom) => set({ bottom })}
      />
      <NumberEntry
        label={words.supply}
        value={draft.supplyV}
        unit="V"
        least={0.1}
        most={1000}
        decimals={3}
        onChange={(supplyV) => set({ supplyV })}
      />
      <NumberEntry
        label={words.supplyTolerance}
        value={draft.supplyTolerancePercent}
        unit="± %"
        least={0}
        most={50}
        decimals={2}
        onChange={(supplyTolerancePercent) => set({ supplyTolerancePercent })}
      />
      <NumberEntry
        label={words.converterError}
        value={draft.converterErrorMv}
        unit="± mV"
        least={0}
        most={10_000}
        onChange={(converterErrorMv) => set({ converterErrorMv })}
      />
      <Check on={draft.ratiometric} onChange={(ratiometric) => set({ ratiometric })}>
        {words.ratiometric}
      </Check>
    </div>
  );
}

const SHOWN = 6;

/** Cells that make no sense yet: why the group cannot be kept. */
function DraftFaults({ draft, faults }: { draft: StrapDraft; faults: readonly DraftFault[] }) {
  return (
    <ul className="strap-faults" role="status">
      {faults.slice(0, SHOWN).map((fault) => {
        const rowed = fault.table && draft.tables[fault.table].length > 0;
        const head = fault.table && rowed ? (headsOf(draft, fault.table)[fault.column] ?? '') : '';
        return <li key={JSON.stringify(fault)}>{asSentence(words.fault(fault, head))}</li>;
      })}
    </ul>
  );
}

/** What is wrong with a group that can be kept all the same. */
function GroupFaults({ group }: { group: StrapGroup }) {
  const { board } = useDocument();
  const faults = groupFaults(board, group);
  return (
    <ul className="strap-faults" role="status">
      {faults.map((fault) => (
        <li key={JSON.stringify(fault)} data-weight={isNote(fault) ? 'note' : 'warn'}>
          {asSentence(groupFaultWords(fault))}
        </li>
      ))}
    </ul>
  );
}
