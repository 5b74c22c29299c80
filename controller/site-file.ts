import { readFileSync, statSync } from 'node:fs';
import { type Document, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml';
import type { z } from 'zod';
import { type Site, siteSchema } from '../shared-types/site.ts';
import type { SiteFault } from './site-fault.ts';
import { type WordedIssue, wordsOfIssue } from './site-file-words.ts';

export { formatSiteFault, type SiteFault } from './site-fault.ts';

export type SiteFileResult =
  | { readonly ok: true; readonly site: Site }
  | { readonly ok: false; readonly faults: SiteFault[] };

/** What a file has to be. */
interface FileForm<T> {
  readonly schema: z.ZodType<T>;
  /** Its keys in words, for a file that has none. */
  readonly keys: string;
}

/** A site file is a page or two; what is much longer is something else [bytes]. */
const mostBytes = 256 * 1024;
/** Times that the anchors of a file may be expanded before it counts as hostile. */
const mostAliases = 100;
const mostFaults = 50;

/** A fault before its file is named. */
type Finding = Omit<SiteFault, 'file'>;

type Step<Result> =
  | { readonly ok: true; readonly result: Result }
  | { readonly ok: false; readonly findings: readonly Finding[] };

const siteForm: FileForm<Site> = { schema: siteSchema, keys: 'the keys of a site, such as name and pan' };

/** Reads and checks a site file. Never throws; every fault is named that can be told at once. */
export function readSiteFile(path: string): SiteFileResult {
  const read = readCheckedFile(path, siteForm);
  return read.ok ? { ok: true, site: read.content } : read;
}

/** Reads a YAML file and checks it against a schema. Never throws; every fault is named that can be told at once. */
export function readCheckedFile<T>(
  path: string,
  form: FileForm<T>,
): { readonly ok: true; readonly content: T } | { readonly ok: false; readonly faults: SiteFault[] } {
  const checked = check(readText(path), form);
  if (checked.ok) return { ok: true, content: checked.result };
  return {
    ok: false,
    faults: checked.findings.slice(0, mostFaults).map((finding) => ({ file: path, ...finding })),
  };
}

function check<T>(text: Step<string>, { schema, keys }: FileForm<T>): Step<T> {
  if (!text.ok) return text;
  const lines = new LineCounter();
  const document = parseDocument(text.result, { lineCounter: lines, prettyErrors: false });
  if (document.errors.length > 0)
    return { ok: false, findings: document.errors.map((error) => brokenYaml(error, lines, text.result)) };
  const content = contentOf(document, keys);
  if (!content.ok) return content;
  const parsed = schema.safeParse(content.result);
  if (parsed.success) return { ok: true, result: parsed.data };
  const worded = parsed.error.issues.flatMap((issue) => wordsOfIssue(issue, content.result, schema));
  const findings = worded.map((words) => findingOf(words, document, lines));
  return { ok: false, findings: findings.sort((a, b) => a.line - b.line) };
}

function readText(path: string): Step<string> {
  try {
    const { size } = statSync(path);
    if (size > mostBytes) return whole(`${size} bytes`, `at most ${mostBytes} bytes`);
    const bytes = readFileSync(path);
    return { ok: true, result: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch (thrown) {
    if (thrown instanceof TypeError) return whole('bytes that are no UTF-8 text', 'a YAML file in UTF-8');
    const { code } = thrown as NodeJS.ErrnoException;
    return whole(unreadable[code ?? ''] ?? String(thrown), 'a YAML file that can be read');
  }
}

const unreadable: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  EISDIR: 'a folder',
  EACCES: 'a file that this user may not read',
};

const whole = (found: string, allowed: string): Step<never> => ({
  ok: false,
  findings: [{ line: 0, key: '', found, allowed }],
});

function brokenYaml(error: Document['errors'][number], lines: LineCounter, text: string): Finding {
  const [from] = error.pos;
  const { line } = lines.linePos(from);
  const known = yamlFaults[error.code];
  if (known === undefined)
    return { line, key: '', found: `broken YAML (${error.message})`, allowed: 'YAML 1.2' };
  const key = error.code === 'DUPLICATE_KEY' ? (/^[\w-]+/.exec(text.slice(from, from + 100))?.[0] ?? '') : '';
  return { line, key, ...known };
}

const yamlFaults: Readonly<Record<string, { readonly found: string; readonly allowed: string }>> = {
  TAB_AS_INDENT: { found: 'a tab as indentation', allowed: 'spaces' },
  DUPLICATE_KEY: { found: 'a key for the second time', allowed: 'each key once' },
  MULTIPLE_DOCS: { found: 'a second document', allowed: 'one document in a file' },
};

function contentOf(document: Document, keys: string): Step<unknown> {
  try {
    const content: unknown = document.toJS({ maxAliasCount: mostAliases });
    return isMap(document.contents)
      ? { ok: true, result: content }
      : whole(content === null ? 'an empty file' : 'no section', keys);
  } catch {
    return whole('anchors that refer to each other without end', `at most ${mostAliases} uses of anchors`);
  }
}

function findingOf(
  { path, atKey, found, allowed }: WordedIssue,
  document: Document,
  lines: LineCounter,
): Finding {
  const offset = (atKey ? keyOffset(document, path) : undefined) ?? offsetOf(document, path);
  const key = path.map(String).join('.').slice(0, 200);
  return { line: lines.linePos(offset).line, key, found, allowed };
}

/** Where a value stands; for one that is missing, where the part stands that lacks it. */
function offsetOf(document: Document, path: readonly PropertyKey[]): number {
  for (let length = path.length; length > 0; length--) {
    const own = keyOffset(document, path.slice(0, length));
    if (own !== undefined) return own;
  }
  return document.contents?.range?.[0] ?? 0;
}

function keyOffset(document: Document, path: readonly PropertyKey[]): number | undefined {
  const parent = path.length === 1 ? document.contents : document.getIn(path.slice(0, -1), true);
  if (isSeq(parent)) return (parent.items[Number(path.at(-1))] as Node | undefined)?.range?.[0];
  if (!isMap(parent)) return undefined;
  const pair = parent.items.find(({ key }) => isScalar(key) && String(key.value) === String(path.at(-1)));
  return (pair?.key as Node | undefined)?.range?.[0];
}
