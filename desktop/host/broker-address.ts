/** Where a broker is, and as whom the monitor comes if its address says so. */
export interface BrokerAddress {
  readonly protocol: 'mqtt' | 'mqtts' | 'ws' | 'wss';
  readonly host: string;
  readonly port?: number;
  readonly path?: string;
  readonly username?: string;
  readonly password?: string;
}

const protocols: Readonly<Record<string, BrokerAddress['protocol']>> = {
  'mqtt:': 'mqtt',
  'mqtts:': 'mqtts',
  'ws:': 'ws',
  'wss:': 'wss',
};

/** Reads a broker's address. @returns undefined when it is none that MQTT knows. */
export function parseBrokerAddress(text: string): BrokerAddress | undefined {
  const url = URL.parse(text);
  if (url === null || !isWhole(url)) return undefined;
  const protocol = protocols[url.protocol];
  if (protocol === undefined) return undefined;
  const overWeb = protocol.startsWith('ws');
  return {
    protocol,
    // A plain connection wants an IPv6 address without the brackets that an address in a URL needs.
    host: overWeb ? url.hostname : url.hostname.replace(/^\[|\]$/g, ''),
    ...(url.port === '' ? {} : { port: Number(url.port) }),
    ...(overWeb ? { path: url.pathname + url.search } : {}),
    ...(url.username === '' ? {} : { username: decodeURIComponent(url.username) }),
    ...(url.password === '' ? {} : { password: decodeURIComponent(url.password) }),
  };
}

/** The address as everybody may see it: where the broker is. One that cannot be read may hold a password anywhere. */
export function withoutCredentials(text: string): string {
  const url = URL.parse(text);
  if (url === null || !isWhole(url)) return '(unreadable address)';
  return `${url.protocol}//${url.host}${url.pathname}`;
}

/** A / ? or # in a name or password would end the host too early: the @ behind them then comes after it. */
const isWhole = ({ hostname, pathname, search, hash }: URL) =>
  hostname !== '' && !`${pathname}${search}${hash}`.includes('@');
