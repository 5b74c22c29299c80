import { connectAsync, type IClientOptions, type MqttClient } from 'mqtt';
import type { Answer } from '../../shared-types/engine.ts';
import {
  type RequestedOperation,
  type SnapshotMessage,
  siteTopics,
  snapshotMessageSchema,
} from '../../shared-types/messages.ts';
import { type Program, startProgram } from './process.ts';
import { demoContent, type SiteContent, writeSite } from './sites.ts';
import type { TemporaryFolder } from './temporary.ts';
import { until } from './wait.ts';

export const topics = siteTopics('quillhaven-wash-house');

export interface RunningController extends Program {
  readonly brokerUrl: string;
}

interface ControllerStart {
  readonly args?: readonly string[];
  readonly nodeArgs?: readonly string[];
  /** Sections of the site in place of the demo's. */
  readonly site?: SiteContent;
}

/** Starts the controller's own process on the demo's site, one step a second, and waits until it runs. */
export async function startController(
  folder: TemporaryFolder,
  { args = [], nodeArgs = [], site = {} }: ControllerStart = {},
): Promise<RunningController> {
  const content = demoContent({ control: { stepS: 1, outputExpiryS: 10 }, ...site });
  const file = writeSite(folder.file('site.yaml'), content);
  const all = [...nodeArgs, 'controller/main.mjs', '--site', file, '--data', folder.file('data'), ...args];
  const program = startProgram(process.execPath, all);
  const [, brokerUrl = ''] = await program.line(
    /^controller ready: broker (\S+) site quillhaven-wash-house$/,
  );
  return { ...program, brokerUrl };
}

/** What a monitor and a device see of a controller. */
export interface Peer {
  readonly client: MqttClient;
  /** Every message heard, by topic, oldest first. */
  heard(topic: string): unknown[];
  newest(): SnapshotMessage | undefined;
  /** Sends what a healthy device would read. */
  sendReadings(values?: Record<string, number | null>): void;
  ask(operation: RequestedOperation, changes?: Record<string, unknown>): Promise<Answer>;
  end(): Promise<void>;
}

/** A mild noon: the pan is full and warm, nothing is near a limit. */
export const mildNoon = {
  panOutletC: 38,
  panSheetC: 40,
  panInletC: 30,
  storeBottomC: 30,
  storeMiddleC: 32,
  storeTopC: 34,
  ambientC: 22,
  irradianceWM2: 700,
  windMs: 2,
  humidityFraction: 0.6,
  flowLMin: 0,
  panLevelMm: 40,
};

let lastId = 0;

/** @param options - How it gets in; without, as anybody, for one connection. */
export async function connectPeer(url: string, options: IClientOptions = {}): Promise<Peer> {
  const client = await connectAsync(url, { protocolVersion: 4, reconnectPeriod: 0, ...options });
  const messages = new Map<string, unknown[]>();
  client.on('message', (topic, payload) => {
    const list = messages.get(topic) ?? [];
    list.push(JSON.parse(payload.toString()));
    messages.set(topic, list);
  });
  const { snapshot, status, site, answer, deviceOutputs } = topics;
  await client.subscribeAsync([snapshot, status, site, answer, deviceOutputs], { qos: 1 });
  const heard = (topic: string) => messages.get(topic) ?? [];
  return {
    client,
    heard,
    newest: () => snapshotMessageSchema.safeParse(heard(topics.snapshot).at(-1)).data,
    sendReadings(values = mildNoon) {
      client.publish(topics.deviceReadings, JSON.stringify({ schema: 1, sequence: 1, atMs: 1, values }));
    },
    async ask(operation, changes = {}) {
      const id = `request-${++lastId}`;
      const message = {
        schema: 1,
        id,
        issuedAtMs: Date.now(),
        lifeMs: 10_000,
        who: 'a test',
        operation,
        ...changes,
      };
      client.publish(topics.request, JSON.stringify(message), { qos: 1 });
      return until(`the answer to ${operation.kind}`, () =>
        answersOf(heard(topics.answer)).find((answer) => answer.id === message.id),
      );
    },
    end: () => client.endAsync(true),
  };
}

const answersOf = (messages: unknown[]) => messages.map((message) => (message as { answer: Answer }).answer);
