import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { wordsOf } from '../host/replies.ts';
import { type Holder, holders, type Tokens } from './tokens.ts';

export type TokensRead =
  | { readonly ok: true; readonly tokens: Tokens }
  | { readonly ok: false; readonly reason: string };

/** Random bytes of a token that is made here: 256 bits, a design choice. */
const tokenBytes = 32;
/** Letters, digits, - and _ carry 6 bits each: 22 of them are the 128 bits that a random token needs. */
const tokenForm = /^[\w-]{22,200}$/;
/** Permissions of group and others. */
const othersMask = 0o077;

/**
 * Reads the tokens from a file of lines such as `ask: TOKEN` and `look: TOKEN`; one of them is enough.
 * @param make - Makes the file, with new tokens, where there is none.
 */
export function readTokens(path: string, make: boolean): TokensRead {
  try {
    if (make && !existsSync(path)) makeFile(path);
    return readFile(path);
  } catch (thrown) {
    return refused(path, wordsOf(thrown));
  }
}

const refused = (path: string, why: string): TokensRead => ({
  ok: false,
  reason: `the token file ${path} cannot be used: ${why}`,
});

function makeFile(path: string): void {
  const lines = holders.map((holder) => `${holder}: ${randomBytes(tokenBytes).toString('base64url')}\n`);
  // 'wx': a file that appeared meanwhile is not overwritten, nor is a link followed.
  writeFileSync(path, lines.join(''), { mode: 0o600, flag: 'wx' });
}

function readFile(path: string): TokensRead {
  // Windows has no such permissions; there the folder has to keep others out.
  if (process.platform !== 'win32' && (statSync(path).mode & othersMask) !== 0)
    return refused(path, 'other users of this machine may read it; run: chmod 600 on it');
  const tokens: Partial<Record<Holder, string>> = {};
  for (const line of readFileSync(path, 'utf8').split(/\r?\n/)) {
    if (line.trim() === '' || line.startsWith('#')) continue;
    const [, holder, token] = /^(\w+):\s*(.*?)\s*$/.exec(line) ?? [];
    if (holder !== 'ask' && holder !== 'look') return refused(path, 'a line is neither ask: nor look:');
    if (tokens[holder] !== undefined) return refused(path, `it holds ${holder}: twice`);
    if (token === undefined || !tokenForm.test(token))
      return refused(path, `the token of ${holder}: needs 22 letters, digits, - or _ at least, at random`);
    tokens[holder] = token;
  }
  if (tokens.ask === undefined && tokens.look === undefined) return refused(path, 'it holds no token');
  if (tokens.ask === tokens.look) return refused(path, 'both tokens are the same');
  return { ok: true, tokens };
}
