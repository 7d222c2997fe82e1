import { builtinModules } from 'node:module';
import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import packageJson from './package.json' with { type: 'json' };

const here = (path: string) => resolve(import.meta.dirname, path);
const nodeModules = [...builtinModules, ...builtinModules.map((name) => `node:${name}`), 'electron'];
const runTime = [...nodeModules, ...Object.keys(packageJson.dependencies)];
const isRunTime = (id: string) => runTime.some((name) => id === name || id.startsWith(`${name}/`));

/** One configuration, three parts: the window, main with its doors and workers, and the preload (one CommonJS file). */
export default defineConfig({
  root: here('renderer'),
  base: './',
  plugins: [react()],
  define: { __VERSION__: JSON.stringify(packageJson.version) },
  environments: {
    client: {
      build: {
        outDir: here('dist/renderer'),
        emptyOutDir: true,
        rollupOptions: { input: here('renderer/index.html') },
        chunkSizeWarningLimit: 3000,
      },
    },
    main: {
      consumer: 'server',
      resolve: { noExternal: true, external: runTime },
      build: {
        outDir: here('dist/main'),
        emptyOutDir: true,
        target: 'node20',
        minify: false,
        ssr: true,
        rollupOptions: {
          input: {
            'electron-app': here('main/electron-app.ts'),
            'local-app': here('main/local-app.ts'),
            'command-line': here('main/command-line.ts'),
            'evaluation.worker': here('main/workers/evaluation.worker.ts'),
            'sheet.worker': here('main/shells/sheet.worker.ts'),
          },
          external: isRunTime,
          output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'shared/[name]-[hash].js' },
        },
      },
    },
    preload: {
      consumer: 'server',
      build: {
        outDir: here('dist/preload'),
        emptyOutDir: true,
        target: 'node20',
        ssr: true,
        rollupOptions: {
          input: { preload: here('main/shells/electron/preload.ts') },
          external: nodeModules,
          output: { format: 'cjs', entryFileNames: '[name].cjs' },
        },
      },
    },
  },
  builder: {
    async buildApp(builder) {
      for (const name of ['client', 'main', 'preload']) await builder.build(builder.environments[name]);
    },
  },
});
