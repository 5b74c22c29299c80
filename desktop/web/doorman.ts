import type { IncomingHttpHeaders } from 'node:http';

/** Addresses that only this machine reaches. */
const loopbackHosts = ['127.0.0.1', 'localhost', '::1'] as const;
export type LoopbackHost = (typeof loopbackHosts)[number];

export const isLoopbackHost = (text: string): text is LoopbackHost =>
  (loopbackHosts as readonly string[]).includes(text);

/**
 * Whether a request speaks to this machine by one of its own names.
 *
 * A page of somebody else's site can have its name resolve to 127.0.0.1 (DNS rebinding); its requests
 * then come from this machine's browser, but still carry that foreign name. The port may differ from
 * the server's own, so that a forwarded port works.
 */
export function speaksToLoopback({ host }: IncomingHttpHeaders): boolean {
  if (host === undefined) return false;
  const url = URL.parse(`http://${host}/`);
  if (url === null || url.host !== host.toLowerCase().replace(/:80$/, '')) return false;
  return isLoopbackHost(url.hostname.replace(/^\[|\]$/g, ''));
}

/**
 * Whether a WebSocket was opened by this server's own page. Browsers do not keep other pages from
 * opening one, but always say who asks (RFC 6455 section 10.2). A program that is no browser need not say.
 */
export function comesFromOwnPage({ host, origin }: IncomingHttpHeaders): boolean {
  if (origin === undefined) return true;
  return host !== undefined && URL.parse(origin)?.host === URL.parse(`http://${host}/`)?.host;
}
