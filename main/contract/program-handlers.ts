import { succeed } from '../../shared-types/problem.ts';
import type { Handlers } from './dispatch.ts';
import type { Services } from './program.ts';

type ProgramHandlers = Pick<Handlers, 'settings.read' | 'settings.write' | 'about.read'>;

export const programHandlers = ({ settings, about }: Services): ProgramHandlers => ({
  'settings.read': () => succeed(settings.read()),
  'settings.write': (input) => settings.write(input.settings),
  'about.read': () => succeed(about),
});
