import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface TemporaryFolder {
  readonly path: string;
  file(name: string): string;
  remove(): void;
}

/** A new folder below the system's temporary one; whoever made it removes it. */
export function temporaryFolder(purpose: string): TemporaryFolder {
  const path = mkdtempSync(join(tmpdir(), `flatwater-${purpose}-`));
  return {
    path,
    file: (name) => join(path, name),
    remove: () => rmSync(path, { recursive: true, force: true, maxRetries: 3 }),
  };
}
