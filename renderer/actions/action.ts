import type { LucideIcon } from 'lucide-react';
import type { actionGroups } from '../../shared-types/words/window/actions.ts';
import type { App } from '../state/app.ts';
import type { AppState } from '../state/app-state.ts';

/** One thing the window can do. Menu, keys, tooltips, palette and the key sheet are all made from these. */
export type Action = {
  id: string;
  group: keyof typeof actionGroups;
  label: string;
  /** Key chords such as 'Ctrl+Z', by the `key` of the event. */
  keys: readonly string[];
  icon?: LucideIcon;
  /** A toggle that is on. */
  on?: (state: AppState) => boolean;
  /** Asked before; an action that may not run is absent from menu and palette. */
  enabled: (state: AppState) => boolean;
  run: (app: App) => void;
};

export const hasTicket = (state: AppState): boolean => state.ticket !== null;
export const hasParts = (state: AppState): boolean => hasTicket(state) && state.selection.parts.size > 0;
