import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { wordsOf } from '../host/replies.ts';

/** Builds the page, as a process of its own, so that the build's progress does not reach the terminal. */
const configFile = fileURLToPath(new URL('../vite.config.ts', import.meta.url));
try {
  await build({ configFile, logLevel: 'silent' });
  console.log('done');
} catch (thrown) {
  console.error(wordsOf(thrown));
  process.exitCode = 1;
}
