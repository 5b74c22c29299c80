import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { type TemporaryFolder, temporaryFolder } from './temporary.ts';

/**
 * Builds the page as it is now into a folder of its own; whoever made it removes it. Under a test runner
 * it is React's talkative variant, which says on the console what it finds amiss.
 */
export async function buildPage(): Promise<TemporaryFolder> {
  const folder = temporaryFolder('page');
  await build({
    configFile: fileURLToPath(new URL('../../desktop/vite.config.ts', import.meta.url)),
    logLevel: 'error',
    build: { outDir: folder.path, emptyOutDir: true },
  });
  return folder;
}
