import type { IncomingMessage, ServerResponse } from 'node:http';
import { type Access, accessPaths, tokenField } from '../../shared-types/monitor-access.ts';
import { cookieFor } from './cookie.ts';
import { postedByOwnPage } from './doorman.ts';
import type { Gate } from './gate.ts';
import { readForm } from './read-form.ts';
import { sessionLifeMs } from './sessions.ts';

type Route = (request: IncomingMessage, response: ServerResponse, gate: Gate) => Promise<void> | void;

const methods: Readonly<Record<string, { readonly method: string; readonly route: Route }>> = {
  [accessPaths.access]: { method: 'GET', route: tellAccess },
  [accessPaths.signIn]: { method: 'POST', route: signIn },
  [accessPaths.signOut]: { method: 'POST', route: signOut },
};

/**
 * Answers who somebody is, and lets them sign in and out.
 * @returns false when the request is about something else.
 */
export function answerAccess(request: IncomingMessage, response: ServerResponse, gate: Gate): boolean {
  const path = URL.parse(request.url ?? '', 'http://localhost')?.pathname ?? '';
  const found = Object.hasOwn(methods, path) ? methods[path] : undefined;
  if (found === undefined) return false;
  response.setHeader('Cache-Control', 'no-store');
  if (request.method !== found.method) response.writeHead(405, { Allow: found.method }).end();
  else if (found.method === 'POST' && !postedByOwnPage(request.headers)) response.writeHead(403).end();
  else void found.route(request, response, gate);
  return true;
}

function tellAccess(request: IncomingMessage, response: ServerResponse, gate: Gate): void {
  const access: Access = {
    wantsToken: gate.wantsToken,
    may: gate.visitor(request)?.may ?? 'nothing',
  };
  response.writeHead(200, { 'Content-Type': 'application/json' }).end(JSON.stringify(access));
}

async function signIn(request: IncomingMessage, response: ServerResponse, gate: Gate): Promise<void> {
  const form = await readForm(request);
  if (!form.ok) return void response.writeHead(form.status, { Connection: 'close' }).end();
  const result = await gate.signIn(request, form.fields.get(tokenField) ?? '');
  if (result.ok) {
    const cookie = cookieTo(request, result.session.id, sessionLifeMs / 1000);
    return void response.writeHead(204, { 'Set-Cookie': cookie }).end();
  }
  if (result.waitS === undefined) return void response.writeHead(401).end();
  return void response.writeHead(429, { 'Retry-After': String(result.waitS) }).end();
}

function signOut(request: IncomingMessage, response: ServerResponse, gate: Gate): void {
  gate.signOut(request);
  response.writeHead(204, { 'Set-Cookie': cookieTo(request, '', 0) }).end();
}

const cookieTo = ({ socket, headers }: IncomingMessage, id: string, ageS: number) =>
  cookieFor(socket.localPort ?? 0, id, ageS, headers.origin);
