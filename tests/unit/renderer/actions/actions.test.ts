import { expect, test } from 'vitest';
import { chordsOf, type KeyPress } from '../../../../renderer/actions/chords.ts';
import { ACTIONS, actionForPress, chordTable } from '../../../../renderer/actions/table.ts';

const press = (key: string, more: Partial<KeyPress> = {}): KeyPress => ({
  key,
  code: '',
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...more,
});

test('no key belongs to two actions, and such a table is refused', () => {
  expect(() => chordTable(ACTIONS)).not.toThrow();
  const [first] = ACTIONS;
  expect(() => chordTable([first, { ...first, id: 'other' }])).toThrow(/taken twice/);
});

test('every action has an id of its own and a label', () => {
  expect(new Set(ACTIONS.map((action) => action.id)).size).toBe(ACTIONS.length);
  for (const action of ACTIONS) expect(action.label).toMatch(/^[A-Z]/);
});

test('tags are their letters and O turns the board over, whatever the case', () => {
  const ids = ['r', 'L', 's', 'X', 'p', 'W', 'o'].map((key) => actionForPress(press(key))?.id);
  expect(ids).toEqual([
    'tag-remove',
    'tag-relocate',
    'tag-shield',
    'tag-replace',
    'tag-reprogram',
    'tag-watchPoint',
    'turn-over',
  ]);
});

test('undo and redo by the usual chords', () => {
  const control = { ctrlKey: true };
  expect(actionForPress(press('z', control))?.id).toBe('undo');
  expect(actionForPress(press('y', control))?.id).toBe('redo');
  expect(actionForPress(press('Z', { ctrlKey: true, shiftKey: true }))?.id).toBe('redo');
  expect(actionForPress(press('z', { metaKey: true }))?.id).toBe('undo');
});

test('Shift with a digit counts on any keyboard, signs count without Shift', () => {
  expect(actionForPress(press('!', { shiftKey: true, code: 'Digit1' }))?.id).toBe('fit-all');
  expect(actionForPress(press('"', { shiftKey: true, code: 'Digit2' }))?.id).toBe('fit-selection');
  expect(actionForPress(press('?', { shiftKey: true, code: 'Slash' }))?.id).toBe('help');
  expect(actionForPress(press('P', { shiftKey: true, ctrlKey: true }))?.id).toBe('palette');
  expect(chordsOf(press('/', { shiftKey: true, code: 'Digit7' }))).toEqual(['/', 'Shift+7']);
});
