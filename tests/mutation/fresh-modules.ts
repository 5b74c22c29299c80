import { readFileSync } from 'node:fs';
import { registerHooks, stripTypeScriptTypes } from 'node:module';
import { fileURLToPath } from 'node:url';

const stripped = new Map<string, string>();
let round = 0;

/**
 * Loads test files and the engine below a folder anew after each call of `freshModules`, so that nothing that one
 * mutant left in them is met by the next. What they import of the test runner is replaced.
 */
export function loadFreshly(folder: URL, testRunner: string): void {
  const kept = /\/(node_modules|shared-types)\//;
  const isFresh = (url: string) =>
    url.startsWith(folder.href) && !kept.test(url.slice(folder.href.length - 1));
  registerHooks({
    resolve(specifier, context, next) {
      if (specifier === 'vitest' && context.parentURL !== testRunner)
        return { url: testRunner, shortCircuit: true };
      const found = next(specifier, context);
      return isFresh(found.url) ? { ...found, url: `${found.url}?round=${round}` } : found;
    },
    load(url, context, next) {
      if (!isFresh(url)) return next(url, context);
      return { format: 'module', source: sourceOf(url), shortCircuit: true };
    },
  });
}

export function freshModules(): void {
  round++;
}

function sourceOf(url: string): string {
  const path = fileURLToPath(url.replace(/\?.*$/, ''));
  const known = stripped.get(path);
  if (known !== undefined) return known;
  const source = stripTypeScriptTypes(readFileSync(path, 'utf8'));
  stripped.set(path, source);
  return source;
}
