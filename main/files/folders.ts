import { homedir } from 'node:os';
import { join } from 'node:path';

type Surroundings = { platform: NodeJS.Platform; env: NodeJS.ProcessEnv; home: string };
const here = (): Surroundings => ({ platform: process.platform, env: process.env, home: homedir() });

/** The ticket shelf until another folder is chosen. */
export const defaultShelfFolder = ({ home } = here()): string => join(home, 'Heatmargin');

/**
 * The app's own folder outside Electron: settings, journals, earlier versions.
 * Linux: XDG Base Directory Specification 0.8, $XDG_DATA_HOME; elsewhere the systems' usual places (common practice, no source).
 */
export function defaultAppFolder({ platform, env, home } = here()): string {
  if (platform === 'win32') return join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Heatmargin');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Heatmargin');
  return join(env.XDG_DATA_HOME || join(home, '.local', 'share'), 'heatmargin');
}
