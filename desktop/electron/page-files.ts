import { readFile } from 'node:fs/promises';
import { extname, resolve, sep } from 'node:path';
import { pageHeaders } from '../host/page-policy.ts';
import { isOwnPage } from './page-address.ts';

const contentTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.map': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
};

/**
 * File of the page that an address names, or undefined when it names none.
 *
 * @param folder - Absolute path of the built page; nothing outside it is ever named.
 */
export function pageFile(folder: string, address: string): string | undefined {
  if (!isOwnPage(address)) return undefined;
  const path = decoded(new URL(address).pathname);
  if (path === undefined || path.includes('\0') || path.includes('\\')) return undefined;
  const file = resolve(folder, `.${path === '/' ? '/index.html' : path}`);
  const known = extname(file) in contentTypes;
  return known && file.startsWith(folder + sep) ? file : undefined;
}

function decoded(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}

/** Answers the window's request for a file of its page, with the page's policy on every answer. */
export async function pageResponse(folder: string, address: string): Promise<Response> {
  const file = pageFile(folder, address);
  const bytes = file === undefined ? undefined : await readFile(file).catch(() => undefined);
  if (file === undefined || bytes === undefined)
    return new Response(null, { status: 404, headers: pageHeaders });
  const type = contentTypes[extname(file)] ?? '';
  return new Response(bytes, { headers: { ...pageHeaders, 'Content-Type': type } });
}
