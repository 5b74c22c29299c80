import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { siteSchema } from './site.ts';

/** Where the schema for editors stands, made from the zod schema of a site file. */
export const schemaPath = fileURLToPath(new URL('site.schema.json', import.meta.url));

/** Text of the JSON Schema of what a person writes into a site file: defaults may be left out. */
export function siteJsonSchema(): string {
  const schema = z.toJSONSchema(siteSchema, { io: 'input' });
  return `${JSON.stringify({ ...schema, title: 'flatwater site file' }, null, 2)}\n`;
}

function isCurrent(): boolean {
  try {
    return readFileSync(schemaPath, 'utf8') === siteJsonSchema();
  } catch {
    return false;
  }
}

if (import.meta.main) {
  if (!process.argv.includes('--check')) writeFileSync(schemaPath, siteJsonSchema());
  else if (!isCurrent()) {
    console.error('shared-types/site.schema.json is not current: npm run schema');
    process.exitCode = 1;
  }
}
