import { parseArgs } from 'node:util';

export type LocalOptions = {
  window: boolean;
  /** Keep serving after the last window closed. */
  stay: boolean;
  port: number;
  shelf: string | null;
  appFolder: string | null;
  /** A ticket to open at the start, edited where it lies. */
  ticket: string | null;
};

/** Words after the door's name. Null: they make no sense. Without a window the door stays until it is stopped. */
export function readLocalOptions(words: readonly string[]): LocalOptions | null {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      allowNegative: true,
      options: {
        window: { type: 'boolean', default: true },
        stay: { type: 'boolean', default: false },
        port: { type: 'string', default: '0' },
        shelf: { type: 'string' },
        'app-folder': { type: 'string' },
      },
    });
    const port = Number(values.port);
    if (!Number.isInteger(port) || port < 0 || port > 65535 || positionals.length > 1) return null;
    return {
      ...{ window: values.window, stay: values.stay || !values.window, port },
      ...{ shelf: values.shelf ?? null, appFolder: values['app-folder'] ?? null, ticket: positionals[0] ?? null },
    };
  } catch {
    return null;
  }
}
