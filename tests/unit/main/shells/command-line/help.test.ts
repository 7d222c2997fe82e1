import { describe, expect, test } from 'vitest';
import { commandHelp } from '../../../../../shared-types/words/command-help.ts';
import { USAGE } from '../../../../../shared-types/words/command-line.ts';
import { commandLineIn } from '../../../../support/command-line.ts';

const { run } = commandLineIn('help');
const COMMANDS = [...new Set([...USAGE.matchAll(/^ {2}heatmargin ([a-z-]+)/gm)].map(([, name]) => name))];

describe('help of one command', () => {
  test.each(COMMANDS)('%s --help: its use and its options, none of which it does not know', async (name) => {
    const told = await run(name, 'x', '--help');
    expect(told).toMatchObject({ status: 0, error: '' });
    expect(told.out).toBe(`${commandHelp(name)}\n`);
    expect(told.out.startsWith(`  heatmargin ${name} `)).toBe(true);
    for (const [, option] of told.out.matchAll(/^ {2}(?:-\w, )?(--[a-z-]+)/gm)) {
      const used = await run(name, option);
      expect(used.error, option).not.toMatch(/no option|no command/);
    }
  });

  test('options of an overview stand in the help of their command', () => {
    for (const name of COMMANDS) {
      const [use, options = ''] = (commandHelp(name) ?? '').split('\nOptions:');
      for (const [option] of use.matchAll(/--[a-z-]+/g)) expect(options, `${name} ${option}`).toContain(option);
    }
  });
});
