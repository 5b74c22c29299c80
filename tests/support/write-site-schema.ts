import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { siteSchema } from '../../shared-types/site.ts';

/** Where the schema for editors stands, made from the zod schema of a site file. */
export const schemaPath = fileURLToPath(new URL('../../shared-types/site.schema.json', import.meta.url));

/** Text of the JSON Schema of what a person writes into a site file: defaults may be left out. */
export function siteJsonSchema(): string {
  const schema = z.toJSONSchema(siteSchema, { io: 'input' });
  return `${JSON.stringify({ ...schema, title: 'flatwater site file' }, null, 2)}\n`;
}

if (import.meta.main) writeFileSync(schemaPath, siteJsonSchema());
