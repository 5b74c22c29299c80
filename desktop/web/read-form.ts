import type { IncomingMessage } from 'node:http';

export type FormRead =
  | { readonly ok: true; readonly fields: URLSearchParams }
  | { readonly ok: false; readonly status: 400 | 413 | 415 };

/** Longest form that is read [bytes]; a token and its name take some 60. A design choice. */
export const mostFormBytes = 1024;

/** Reads the fields of a form that was posted; what is longer than a sign-in is not read to its end. */
export async function readForm(request: IncomingMessage): Promise<FormRead> {
  const [type] = (request.headers['content-type'] ?? '').split(';');
  if (type?.trim().toLowerCase() !== 'application/x-www-form-urlencoded') return { ok: false, status: 415 };
  let text = '';
  try {
    for await (const chunk of request.setEncoding('latin1')) {
      text += chunk;
      if (text.length > mostFormBytes) return { ok: false, status: 413 };
    }
  } catch {
    return { ok: false, status: 400 };
  }
  return { ok: true, fields: new URLSearchParams(text) };
}
