import { gzipSync } from 'node:zlib';
import { build, type Plugin } from 'vite';

/** The engine as one plain script: `engine` is a global variable with what `entry.ts` exports. */
export interface Bundle {
  readonly code: string;
  readonly bytes: number;
  /** As it would be carried to a board: gzip. */
  readonly compressedBytes: number;
  /** Characters of each file in it before whitespace and names are shortened, the largest first. */
  readonly files: readonly { readonly file: string; readonly characters: number }[];
}

/**
 * What the engine's tables say to people alone: the monitor has it from the same tables, a board needs none of it.
 * No decision carries it; the day that is decided alike shows that nothing else was dropped.
 */
const forPeople =
  /\b(?:unit|title|likelyCauses|consequence|response|howSoon|meaning|clears):\s*(?:'[^'\n]*'|"[^"\n]*"),\s/g;

/** The modules that make sentences, and the functions that they offer. */
const makesSentences = /\/engine\/explain\/[a-z-]+-text\.ts$/;
const offered = /^export function (\w+)/gm;

/** A board publishes codes and numbers: every sentence is left empty, to be made by whoever shows them. */
const withoutSentences: Plugin = {
  name: 'without-sentences',
  enforce: 'pre',
  transform: (code, path) => {
    const empty = [...code.matchAll(offered)].map(([, name]) => `export const ${name} = () => '';\n`);
    return { code: makesSentences.test(path) ? empty.join('') : code.replace(forPeople, ''), map: null };
  },
};

/** Bundles the engine as a board would carry it: minified, nothing left to import. */
export async function bundleEngine(): Promise<Bundle> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    plugins: [withoutSentences],
    build: {
      write: false,
      minify: true,
      target: 'es2023',
      lib: { entry: 'tests/support/embedded/entry.ts', formats: ['iife'], name: 'engine' },
    },
  });
  const [whole] = Array.isArray(built) ? built : [];
  const [chunk, ...others] = whole?.output ?? [];
  if (chunk === undefined || others.length > 0 || chunk.imports.length > 0)
    throw new Error('the engine is not one file');
  const { code, modules } = chunk;
  const files = Object.entries(modules)
    .map(([path, { renderedLength }]) => ({ file: inProject(path), characters: renderedLength }))
    .sort((a, b) => b.characters - a.characters);
  return { code, bytes: Buffer.byteLength(code), compressedBytes: gzipSync(code).length, files };
}

function inProject(path: string): string {
  return path.replace(/^.*\/(?=(controller|shared-types|tests)\/)/, '');
}
