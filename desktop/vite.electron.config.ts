import { builtinModules } from 'node:module';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** What the program brings along itself. */
const external = ['electron', ...builtinModules, /^node:/];

/** Each with the libraries it needs, so that the built folder runs on its own. */
const bundles = {
  main: {
    input: {
      main: here('./electron/main.ts'),
      'history-worker': here('./host/history-worker.ts'),
      'import-worker': here('./host/import-worker.ts'),
      'tuning-worker': here('./host/tuning-worker.ts'),
      'sweep-worker': here('../sim/replay/sweep/worker.ts'),
    },
    output: { format: 'es', entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
  },
  // A preload script in a sandbox cannot be an ES module.
  preload: {
    input: { preload: here('./electron/preload.ts') },
    output: { format: 'cjs', entryFileNames: '[name].cjs' },
  },
} as const;

/** The library of the sun's position loads a file beside itself at run time; in a bundle it is imported instead. */
const solarPositionAlong = {
  name: 'solar-position-along',
  transform(code: string, id: string) {
    const loads = '_load("../lib/spa.cjs")';
    if (!id.includes('/nrel-spa/') || !code.includes(loads)) return null;
    return `import solarPosition from '../lib/spa.cjs';\n${code.replace(loads, 'solarPosition')}`;
  },
};

export default defineConfig(({ mode }) => {
  const { input, output } = bundles[mode === 'preload' ? 'preload' : 'main'];
  return {
    root: here('.'),
    ssr: { noExternal: true, target: 'node' },
    plugins: [solarPositionAlong],
    build: {
      ssr: true,
      outDir: here('../dist/electron'),
      emptyOutDir: mode !== 'preload',
      target: 'node24',
      minify: false,
      rolldownOptions: { input, output, external },
    },
  };
});
