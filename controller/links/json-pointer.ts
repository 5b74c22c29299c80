/**
 * Value that a JSON pointer names inside a parsed document.
 *
 * @param pointer - RFC 6901 text, well formed (the site file is checked for it); empty: the whole document.
 * @returns undefined when there is no such value.
 *
 * Source: RFC 6901 sections 3 and 4; its section 5 is the test.
 */
export function atPointer(document: unknown, pointer: string): unknown {
  if (pointer === '') return document;
  let value = document;
  for (const token of pointer.slice(1).split('/')) {
    value = member(value, token.replaceAll('~1', '/').replaceAll('~0', '~'));
    if (value === undefined) return undefined;
  }
  return value;
}

function member(value: unknown, name: string): unknown {
  if (Array.isArray(value)) return /^(0|[1-9]\d*)$/.test(name) ? value[Number(name)] : undefined;
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, name)) return undefined;
  return (value as Record<string, unknown>)[name];
}
