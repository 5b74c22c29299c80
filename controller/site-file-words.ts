import type { z } from 'zod';
import { knownKeysAt, nearestKey } from './site-file-keys.ts';

type Issue = z.core.$ZodIssue;

/** What is wrong at a path, in words; `atKey` when the key itself is wrong and not its value. */
export interface WordedIssue {
  readonly path: readonly PropertyKey[];
  readonly atKey: boolean;
  readonly found: string;
  readonly allowed: string;
}

const longestShown = 60;
const mostNamed = 30;

/** Puts an issue of the schema into words, one piece a fault. `content` is the whole file. */
export function wordsOfIssue(issue: Issue, content: unknown, schema: z.ZodType): WordedIssue[] {
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => unknownKey(issue.path, key, knownKeysAt(issue.path, schema)));
  // Once the link is of no known kind, nothing more can be said about it.
  if (issue.code === 'invalid_union' && issue.errors.length > 0)
    return issue.errors
      .flat()
      .flatMap((inner) =>
        wordsOfIssue({ ...inner, path: [...issue.path, ...inner.path] } as Issue, content, schema),
      );
  const found = shown(valueAt(content, issue.path));
  return [{ path: issue.path, atKey: false, found, allowed: allowedBy(issue) }];
}

function unknownKey(parent: readonly PropertyKey[], key: string, known: readonly string[]): WordedIssue {
  const nearest = nearestKey(key, known);
  const list = known.length === 0 ? 'no key here' : listed(known);
  return {
    path: [...parent, key],
    atKey: true,
    found: 'an unknown key',
    allowed: nearest === undefined ? list : `${nearest}, perhaps; all keys here: ${list}`,
  };
}

function allowedBy(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return kinds[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return listed(issue.values.map(String));
    case 'too_small':
      return `${issue.origin === 'string' ? 'a length of ' : ''}${issue.minimum} or more`;
    case 'too_big':
      return `${issue.origin === 'string' ? 'a length of ' : ''}${issue.maximum} or less`;
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? listed(issue.options.map(String))
        : issue.message;
    default:
      // The schema's own words say what is allowed.
      return issue.message;
  }
}

const kinds: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a section with keys of its own',
  record: 'a section with keys of its own',
};

function listed(words: readonly string[]): string {
  const named = words.slice(0, mostNamed).join(', ');
  return words.length > mostNamed ? `${named} and ${words.length - mostNamed} more` : named;
}

function valueAt(content: unknown, path: readonly PropertyKey[]): unknown {
  let value = content;
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[part];
  }
  return value;
}

function shown(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object') return 'a section';
  const text = typeof value === 'string' ? JSON.stringify(value) : String(value);
  return text.length > longestShown ? `${text.slice(0, longestShown)}…` : text;
}
