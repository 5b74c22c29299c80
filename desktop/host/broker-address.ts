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
  const protocol = protocols[url?.protocol ?? ''];
  if (url === null || protocol === undefined || url.hostname === '') return undefined;
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

/** The address as it may be shown: without the name and password that it may carry. */
export function withoutCredentials(text: string): string {
  const url = URL.parse(text);
  if (url === null) return text;
  url.username = '';
  url.password = '';
  return url.href;
}
