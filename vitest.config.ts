import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // Two cores: the default leaves one of them idle when not watching (381 s against 249 s measured).
    maxWorkers: '100%',
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/{unit,documents,contract,security,faults}/**/*.test.ts'],
          testTimeout: 30000,
          server: { deps: { inline: ['electron-store'] } },
        },
      },
      { test: { name: 'reference', include: ['tests/reference/**/*.test.ts'], testTimeout: 120000 } },
    ],
  },
});
