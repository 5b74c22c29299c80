import { chmodSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { readTokens } from '../../../desktop/web/token-file.ts';
import { holderOf } from '../../../desktop/web/tokens.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const folder = temporaryFolder('tokens');
afterAll(() => folder.remove());

let files = 0;
function fileOf(text: string, mode = 0o600): string {
  const path = folder.file(`tokens-${files++}`);
  writeFileSync(path, text, { mode });
  return path;
}
const one = 'A'.repeat(22);
const two = 'b-_4'.repeat(6);

describe('readTokens', () => {
  it('makes a file for its owner alone, with two tokens of 256 random bits', () => {
    const path = folder.file('made');
    const read = readTokens(path, true);
    if (!read.ok) throw new Error(read.reason);
    expect(statSync(path).mode & 0o777).toBe(0o600);
    for (const token of Object.values(read.tokens)) expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    expect(Object.keys(read.tokens)).toEqual(['ask', 'look']);
    expect(readTokens(path, true)).toEqual(read);
    const other = readTokens(folder.file('made-too'), true);
    expect(other.ok && other.tokens.ask).not.toBe(read.tokens.ask);
  });

  it('makes none unasked, nor where a link leads elsewhere', () => {
    const path = folder.file('none');
    expect(readTokens(path, false)).toMatchObject({ ok: false });
    symlinkSync(folder.file('target'), folder.file('link'));
    expect(readTokens(folder.file('link'), true)).toMatchObject({ ok: false });
  });

  it('reads comments, empty lines and either kind of holder', () => {
    expect(readTokens(fileOf(`# ours\n\nask: ${one}\r\nlook:  ${two} \n`), false)).toEqual({
      ok: true,
      tokens: { ask: one, look: two },
    });
    expect(readTokens(fileOf(`look: ${two}`), false)).toEqual({ ok: true, tokens: { look: two } });
  });

  it.each([0o640, 0o604, 0o620])('refuses a file that others may use: mode %o', (mode) => {
    const path = fileOf(`ask: ${one}`);
    chmodSync(path, mode);
    expect(readTokens(path, false)).toEqual({ ok: false, reason: expect.stringContaining('chmod 600') });
  });

  it.each([
    ['nothing in it', '', 'no token'],
    ['a short token', `ask: ${one.slice(1)}`, '22 letters'],
    ['a token of other signs', `ask: ${one}!`, '22 letters'],
    ['a stranger', `admin: ${one}`, 'neither'],
    ['a bare token', one, 'neither'],
    ['one holder twice', `ask: ${one}\nask: ${two}`, 'twice'],
    ['one token for both', `ask: ${one}\nlook: ${one}`, 'the same'],
  ])('refuses a file with %s', (_what, text, words) => {
    expect(readTokens(fileOf(text), false)).toEqual({ ok: false, reason: expect.stringContaining(words) });
  });

  it('never tells a token in its reasons', () => {
    const read = readTokens(fileOf(`ask: ${one}!`), false);
    expect(read.ok ? '' : read.reason).not.toContain(one);
  });

  it('is what is written: the file holds each token once', () => {
    const path = folder.file('made');
    const read = readTokens(path, false);
    const text = readFileSync(path, 'utf8');
    expect(read.ok && text).toBe(read.ok && `ask: ${read.tokens.ask}\nlook: ${read.tokens.look}\n`);
  });
});

describe('holderOf', () => {
  const tokens = { ask: one, look: two };
  it.each([
    [one, 'ask'],
    [two, 'look'],
    ['', undefined],
    [`${one}A`, undefined],
    [one.slice(1), undefined],
    [one.toLowerCase(), undefined],
  ])('of %s is %s', (given, holder) => {
    expect(holderOf(tokens, given)).toBe(holder);
  });
  it('knows no holder without a token of theirs', () => {
    expect(holderOf({ look: two }, '')).toBeUndefined();
    expect(holderOf({ look: two }, two)).toBe('look');
  });
});
