import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';
import { type TemporaryFolder, temporaryFolder } from './temporary.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the page that was built for this run. */
    pageFolder: string;
  }
}

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

/** The test runner calls this before the first browser test: the page is built once for all of them. */
export default async function setup(project: TestProject): Promise<() => void> {
  const folder = await buildPage();
  project.provide('pageFolder', folder.path);
  return () => folder.remove();
}
