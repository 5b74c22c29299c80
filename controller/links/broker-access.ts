import { timingSafeEqual } from 'node:crypto';
import type { AuthenticateError, Client, PublishPacket } from 'aedes';
import type { Site } from '../../shared-types/site.ts';
import { createPublishRule } from './broker-rules.ts';
import type { LinkReport } from './link.ts';
import type { BrokerCredentials } from './open-link.ts';

/** Where refused publications go: a topic of the broker itself, under which nobody looks for anything. */
const refusedTopic = '$SYS/refused';

interface Admission {
  readonly controller: BrokerCredentials;
  /** Undefined: anybody. */
  readonly client: BrokerCredentials | undefined;
}

type Authenticated = (error: AuthenticateError | null, success: boolean | null) => void;

/**
 * Who gets in and who may publish, as hooks of the broker.
 *
 * None may throw: an exception in a hook would end the controller around the broker.
 */
export function brokerAccess(site: Site, admission: Admission, report: (report: LinkReport) => void) {
  const controllers = new Map<string, Client>();
  const isController = (client: Client | null) => client !== null && controllers.get(client.id) === client;
  const refusal = createPublishRule(site);
  const reportOnce = onlyOnce((text) => report({ kind: 'message-ignored', text: `broker: ${text}` }));

  const admit = (client: Client): void => {
    controllers.set(client.id, client);
    client.conn.once('close', () => {
      if (isController(client)) controllers.delete(client.id);
    });
  };
  return {
    /** Others than the controller are let in as the site file has it, but not under its client id. */
    authenticate: (
      client: Client,
      username: string | undefined,
      password: Buffer | undefined,
      done: Authenticated,
    ) => {
      if (gives(username, password, admission.controller)) {
        admit(client);
        done(null, true);
        return;
      }
      const isWelcome =
        admission.client === undefined
          ? username !== admission.controller.username
          : gives(username, password, admission.client);
      done(null, isWelcome && !controllers.has(client.id));
    },
    /** A refused publication is emptied and sent aside. */
    authorizePublish: (client: Client | null, packet: PublishPacket, done: (error?: Error) => void) => {
      const why = refusal({
        topic: packet.topic,
        retain: packet.retain,
        fromController: isController(client),
      });
      if (why !== undefined) {
        packet.topic = refusedTopic;
        packet.payload = Buffer.alloc(0);
        reportOnce(why);
      }
      done();
    },
  };
}

function onlyOnce(say: (text: string) => void): (text: string) => void {
  const said = new Set<string>();
  return (text) => {
    if (!said.has(text)) say(text);
    said.add(text);
  };
}

function gives(
  username: string | undefined,
  password: Buffer | undefined,
  wanted: BrokerCredentials,
): boolean {
  return username === wanted.username && same(password, wanted.password);
}

function same(given: Buffer | undefined, wanted: string): boolean {
  const bytes = Buffer.from(wanted);
  return given !== undefined && given.length === bytes.length && timingSafeEqual(given, bytes);
}
