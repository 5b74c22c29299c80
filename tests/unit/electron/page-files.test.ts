import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isOwnPage } from '../../../desktop/electron/page-address.ts';
import { pageFile, pageResponse } from '../../../desktop/electron/page-files.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const top = temporaryFolder('page').path;
const folder = join(top, 'web');
beforeAll(() => {
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'index.html'), 'page');
  writeFileSync(join(top, 'secret.html'), 'secret');
  mkdirSync(join(top, 'web-private'));
  writeFileSync(join(top, 'web-private', 'secret.html'), 'secret');
});
afterAll(() => rmSync(top, { recursive: true }));

describe('isOwnPage', () => {
  it('knows its own', () => expect(isOwnPage('app://flatwater/index.html#/days')).toBe(true));

  it.each([
    'app://flatwater.example/index.html',
    'app://flatwater@elsewhere/',
    'app://owner@flatwater/',
    'app://flatwater:8080/',
    'https://flatwater/index.html',
    'file:///index.html',
    'app:flatwater',
    'about:blank',
    '',
  ])('knows that %s is not', (address) => expect(isOwnPage(address)).toBe(false));
});

describe('pageFile', () => {
  it('finds files of the page', () => {
    expect(pageFile(folder, 'app://flatwater/')).toBe(join(folder, 'index.html'));
    expect(pageFile(folder, 'app://flatwater/assets/main.js?v=1')).toBe(join(folder, 'assets/main.js'));
  });

  it.each([
    'app://flatwater/../secret.html',
    'app://flatwater/%2e%2e/secret.html/../../secret.html',
    'app://flatwater/..%2fsecret.html',
    'app://flatwater/..%2fweb-private%2fsecret.html',
    'app://flatwater/..%5csecret.html',
    'app://flatwater/%00index.html',
    'app://flatwater/%E0%A4%A.html',
    'app://elsewhere/index.html',
    'app://flatwater/passwd',
  ])('finds nothing outside: %s', async (address) => {
    expect(await (await pageResponse(folder, address)).text()).toBe('');
  });

  it('names nothing outside its folder, whatever is asked', () => {
    const piece = fc.constantFrom(
      '..',
      '.',
      '%2e%2e',
      '%2f',
      '/',
      '\\',
      '%5c',
      'assets',
      'a.html',
      '%00',
      ' ',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const file = pageFile(folder, `app://flatwater/${pieces.join('/')}`);
        expect(file === undefined || file.startsWith(`${folder}/`)).toBe(true);
      }),
    );
  });
});

describe('pageResponse', () => {
  it('carries type and policy, found or not', async () => {
    const found = await pageResponse(folder, 'app://flatwater/index.html');
    expect([found.status, await found.text(), found.headers.get('Content-Type')]).toEqual([
      200,
      'page',
      'text/html; charset=utf-8',
    ]);
    const missing = await pageResponse(folder, 'app://flatwater/none.html');
    expect(missing.status).toBe(404);
    for (const { headers } of [found, missing])
      expect(headers.get('Content-Security-Policy')).toContain("default-src 'none'");
  });
});
