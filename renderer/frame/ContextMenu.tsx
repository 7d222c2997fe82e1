import { useRef } from 'react';
import { Header, Menu, MenuItem, MenuSection, Popover, Separator } from 'react-aria-components';
import type { TagKind } from '../../shared-types/tags.ts';
import { frameWords } from '../../shared-types/words/window/frame.ts';
import type { Action } from '../actions/action.ts';
import { shownKeys } from '../actions/chords.ts';
import { actionById } from '../actions/table.ts';
import type { AppState } from '../state/app-state.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { TagGlyph } from '../widgets/TagGlyph.tsx';
import '../widgets/overlays.css';

const onPart = ['tag-remove', 'tag-shield', 'tag-replace', 'tag-relocate', 'tag-reprogram', 'tag-watchPoint'];
const onEdit = ['take-selected', 'confirm-class', 'tall', 'next-pin1', 'duplicate', 'flip-parts', 'ring', 'delete'];
const onView = ['turn-over', 'fit-all', 'fit-selection'];

/** The right button's menu: entries of the action table that may run on what lies under the pointer. */
export function ContextMenu() {
  const app = useApp();
  const menu = useAppState((state) => state.menu);
  const anchor = useRef<HTMLDivElement>(null);
  const close = () => app.store.set((state) => ({ ...state, menu: null }));
  if (!menu) return null;
  return (
    <>
      <div ref={anchor} style={{ position: 'fixed', left: menu.page.x, top: menu.page.y }} />
      <Popover
        className="popover"
        triggerRef={anchor}
        isOpen
        onOpenChange={(open) => !open && close()}
        placement="bottom start"
        offset={0}
      >
        <MenuOf title={menu.pick?.kind === 'part' ? menu.pick.refdes : null} onDone={close} />
      </Popover>
    </>
  );
}

function MenuOf({ title, onDone }: { title: string | null; onDone: () => void }) {
  const app = useApp();
  const state = app.store.get();
  const parts = state.selection.parts.size > 0 ? usable(onPart, state) : [];
  const edits = usable(onEdit, state);
  return (
    <Menu
      className="menu"
      aria-label={title ?? frameWords.canvas}
      autoFocus
      onClose={onDone}
      onAction={(key) => {
        onDone();
        actionById(String(key)).run(app);
      }}
    >
      {parts.length > 0 && (
        <MenuSection>
          {title && <Header className="menu-heading">{title}</Header>}
          {parts.map((action) => entry(action, state))}
        </MenuSection>
      )}
      {edits.length > 0 && <MenuSection>{edits.map((action) => entry(action, state))}</MenuSection>}
      {parts.length + edits.length > 0 && <Separator className="menu-rule" />}
      <MenuSection>{usable(onView, state).map((action) => entry(action, state))}</MenuSection>
    </Menu>
  );
}

const usable = (ids: readonly string[], state: AppState): Action[] =>
  ids.map(actionById).filter((action) => action.enabled(state));

function entry(action: Action, state: AppState) {
  const on = action.on?.(state);
  return (
    <MenuItem key={action.id} id={action.id} textValue={action.label} className="menu-item">
      {action.group === 'tag' && <TagGlyph kind={action.id.replace('tag-', '') as TagKind} size={18} />}
      <span style={on ? { fontWeight: 600 } : undefined}>{action.label}</span>
      <kbd>{shownKeys(action.keys)}</kbd>
    </MenuItem>
  );
}
