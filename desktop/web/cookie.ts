/**
 * The cookie of a session. It names the port, since a browser shares cookies between the ports of a machine
 * (RFC 6265 section 8.5). Scripts cannot read it, and no other site's page makes a browser send it.
 */
const nameFor = (port: number) => `flatwater-${port}`;

/**
 * @param ageS - Seconds that the browser keeps it; 0 takes it back.
 * @param origin - Of the page that asks. To one that came encrypted, by a proxy, the cookie never travels in the open.
 */
export function cookieFor(port: number, id: string, ageS: number, origin: string | undefined): string {
  const secure = origin?.startsWith('https:') === true ? '; Secure' : '';
  return `${nameFor(port)}=${id}; Path=/; Max-Age=${ageS}; HttpOnly; SameSite=Strict${secure}`;
}

/** What a request's Cookie header holds for the server on that port (RFC 6265 section 4.2.1). */
export function sessionIdIn(header: string | undefined, port: number): string | undefined {
  const start = `${nameFor(port)}=`;
  const pair = header?.split(';').find((one) => one.trimStart().startsWith(start));
  return pair?.trimStart().slice(start.length);
}
