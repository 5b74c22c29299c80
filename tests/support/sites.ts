import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse, stringify } from 'yaml';
import { type Site, siteSchema } from '../../shared-types/site.ts';

const demoFile = fileURLToPath(new URL('../../sim/scenarios/quillhaven-wash-house.yaml', import.meta.url));

/** Content of a site file, before it is checked. */
export type SiteContent = Record<string, unknown>;

/** The demo's site file with other top-level sections in place of its own. */
export function demoContent(changes: SiteContent = {}): SiteContent {
  return { ...parse(readFileSync(demoFile, 'utf8')), ...changes };
}

/** The demo's loop on a serial line, its sensors keyed by channel; no broker anywhere. */
export function serialContent(path: string, changes: SiteContent = {}): SiteContent {
  const { broker, publish, ...content } = demoContent();
  const sensors = Object.entries(content['sensors'] as Record<string, { unit: string }>).map(
    ([channel, { unit }]) => [channel, { key: channel, unit }],
  );
  return {
    ...content,
    sensors: Object.fromEntries(sensors),
    link: { kind: 'serial', path },
    ...changes,
  };
}

/** @throws when the content is no site. */
export function siteOf(content: SiteContent): Site {
  return siteSchema.parse(content);
}

/** Writes a site file and returns its path. */
export function writeSite(path: string, content: SiteContent): string {
  writeFileSync(path, stringify(content));
  return path;
}
