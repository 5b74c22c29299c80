import { readFile } from 'node:fs/promises';
import type { Site } from '../../shared-types/site.ts';
import type { Clock } from '../clock.ts';
import type { LinkReport, LoopLink } from './link.ts';

export interface BrokerCredentials {
  readonly username: string;
  readonly password: string;
}

export interface OpenLinkOptions {
  readonly site: Site;
  readonly clock: Clock;
  /** The embedded broker, for a site whose link names no broker of its own. */
  readonly brokerUrl?: string;
  readonly brokerCredentials?: BrokerCredentials;
  /** Told once a cause. */
  readonly report: (report: LinkReport) => void;
}

/**
 * The link that a site file describes; `open()` it to begin.
 *
 * Only the library that this link needs is loaded: each takes some fifteen megabytes.
 *
 * @throws RangeError when the site's link is MQTT and neither it nor the caller names a broker.
 */
export async function openLink(options: OpenLinkOptions): Promise<LoopLink> {
  const { site, clock, report } = options;
  const { link } = site;
  if (link.kind === 'serial') {
    const { serialLink } = await import('./serial/serial-link.ts');
    return serialLink({ site, clock, path: link.path, baud: link.baud, report });
  }
  const { mqttLink } = await import('./mqtt-link.ts');
  const shared = { site, outputsTopic: link.outputsTopic, clock, report };
  if (link.url === undefined) return mqttLink({ ...shared, ...embedded(options) });
  return mqttLink({
    ...shared,
    url: link.url,
    ...(link.username === undefined ? {} : { username: link.username }),
    ...(link.passwordFile === undefined ? {} : { password: fromFile(link.passwordFile, report) }),
  });
}

function embedded(options: OpenLinkOptions) {
  const { brokerUrl: url, brokerCredentials } = options;
  if (url === undefined) throw new RangeError('the link of this site needs a broker');
  if (brokerCredentials === undefined) return { url };
  const { username, password } = brokerCredentials;
  return { url, username, password: async () => password };
}

/** First line of a file; when it cannot be read, that is reported once and no password is sent. */
function fromFile(path: string, report: (report: LinkReport) => void): () => Promise<string | undefined> {
  let reported = false;
  return async () => {
    try {
      return (await readFile(path, 'utf8')).split(/\r?\n/, 1)[0];
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      if (!reported) report({ kind: 'link-lost', text: `the password file cannot be read: ${why}` });
      reported = true;
      return undefined;
    }
  };
}
