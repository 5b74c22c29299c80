import { describe, expect, it } from 'vitest';
import { atPointer } from '../../../controller/links/json-pointer.ts';

/** Document and results of RFC 6901 section 5. */
const document = {
  foo: ['bar', 'baz'],
  '': 0,
  'a/b': 1,
  'c%d': 2,
  'e^f': 3,
  'g|h': 4,
  'i\\j': 5,
  'k"l': 6,
  ' ': 7,
  'm~n': 8,
};

describe('JSON pointer', () => {
  it.each([
    ['', document],
    ['/foo', ['bar', 'baz']],
    ['/foo/0', 'bar'],
    ['/', 0],
    ['/a~1b', 1],
    ['/c%d', 2],
    ['/e^f', 3],
    ['/g|h', 4],
    ['/i\\j', 5],
    ['/k"l', 6],
    ['/ ', 7],
    ['/m~0n', 8],
  ])("RFC 6901 section 5: '%s'", (pointer, value) => {
    expect(atPointer(document, pointer)).toEqual(value);
  });

  it('unescapes ~01 as ~1, not as / (RFC 6901 section 4)', () => {
    expect(atPointer({ '~1': 'right', '/': 'wrong' }, '/~01')).toBe('right');
  });

  it.each(['/foo/2', '/foo/00', '/foo/-', '/foo/01', '/foo/length', '/none', '/a~1b/x', '/ /x'])(
    "finds nothing at '%s'",
    (pointer) => {
      expect(atPointer(document, pointer)).toBeUndefined();
    },
  );

  it.each(['/__proto__', '/constructor', '/toString', '/__proto__/polluted'])(
    "sees no inherited member at '%s'",
    (pointer) => {
      expect(atPointer({}, pointer)).toBeUndefined();
    },
  );

  it('finds nothing in a document that has no members', () => {
    expect(atPointer(5, '/a')).toBeUndefined();
    expect(atPointer(null, '/a')).toBeUndefined();
    expect(atPointer('text', '/length')).toBeUndefined();
  });
});
