import type { IncomingHttpHeaders, IncomingMessage } from 'node:http';
import { isIP } from 'node:net';
import { hostname } from 'node:os';

/** Addresses that only this machine reaches. */
const loopbackHosts: readonly string[] = ['127.0.0.1', 'localhost', '::1'];

export const isLoopbackHost = (text: string): boolean => loopbackHosts.includes(text);

/**
 * Whether a request speaks to this machine by one of its own names.
 *
 * A page of somebody else's site can have its name resolve to this machine (DNS rebinding); its requests
 * then come from a browser that may reach this machine, but still carry that foreign name. The port may
 * differ from the server's own, so that a forwarded port works.
 *
 * @param names - Names besides those of the loopback interface, in small letters.
 * @param ownAddress - Address at which the request arrived; undefined where only loopback names count.
 */
export function speaksToUs(
  { host }: IncomingHttpHeaders,
  names: readonly string[] = [],
  ownAddress?: string,
): boolean {
  if (host === undefined) return false;
  const url = URL.parse(`http://${host}/`);
  if (url === null || url.host !== host.toLowerCase().replace(/:80$/, '')) return false;
  const name = url.hostname.replace(/^\[|\]$/g, '');
  return (
    isLoopbackHost(name) || names.includes(name) || (ownAddress !== undefined && name === plain(ownAddress))
  );
}

/** An IPv4 address without the prefix that it wears on a socket of both families. */
export const plain = (address: string): string => address.replace(/^::ffff:(?=\d+\.)/, '');

/**
 * Names under which other machines know this one. A foreign page cannot have a name without a dot, nor one
 * below .local (RFC 6762), resolve to anything.
 */
function ownNames(listen: string): string[] {
  const machine = hostname().toLowerCase();
  const address = isIP(listen) === 0 ? [listen] : [];
  return [machine, `${machine.replace(/\..*/, '')}.local`, ...address].map((name) => name.toLowerCase());
}

/** Whether a request comes under one of this machine's names. */
export type Doorman = (request: IncomingMessage) => boolean;

/**
 * @param listen - Address of the server; at one of the loopback interface no name of the machine itself counts.
 * @param alsoCalled - Further names, such as that of a proxy before the server. None where nobody signs in: a page of
 *   whoever owns such a name could have it resolve to this machine.
 */
export function createDoorman(listen: string, alsoCalled: readonly string[]): Doorman {
  const further = alsoCalled.map((name) => name.toLowerCase());
  if (isLoopbackHost(listen)) return ({ headers }) => speaksToUs(headers, further);
  const names = [...ownNames(listen), ...further];
  return ({ headers, socket }) => speaksToUs(headers, names, socket.localAddress);
}

/**
 * Whether a WebSocket was opened by this server's own page. Browsers do not keep other pages from
 * opening one, but always say who asks (RFC 6455 section 10.2). A program that is no browser need not say.
 */
export function comesFromOwnPage({ host, origin }: IncomingHttpHeaders): boolean {
  return origin === undefined || isOwnOrigin(origin, host);
}

/** The same for a form: browsers name the origin of every POST (Fetch standard, "append a request Origin header"). */
export function postedByOwnPage({ host, origin }: IncomingHttpHeaders): boolean {
  return origin !== undefined && isOwnOrigin(origin, host);
}

function isOwnOrigin(origin: string, host: string | undefined): boolean {
  return host !== undefined && URL.parse(origin)?.host === URL.parse(`http://${host}/`)?.host;
}
