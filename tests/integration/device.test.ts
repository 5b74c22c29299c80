import { createServer, type Server, type Socket } from 'node:net';
import { Aedes } from 'aedes';
import mqtt, { type MqttClient } from 'mqtt';
import { SerialPort } from 'serialport';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { formatAnchor } from '../../controller/clock.ts';
import { createFrameParser, encodeFrame, type SerialFrame } from '../../controller/links/serial/codec.ts';
import { siteTopics } from '../../shared-types/messages.ts';
import { freePort } from '../support/free-port.ts';
import { type Program, startNode } from '../support/process.ts';
import { openSerialLine } from '../support/pty.ts';
import { serialContent, writeSite } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';
import { sleep, until } from '../support/wait.ts';

const siteFile = 'sim/scenarios/quillhaven-wash-house.yaml';
const topics = siteTopics('quillhaven-wash-house');
const pumpOn = {
  schema: 1,
  sequence: 1,
  pumpFraction: 1,
  drainOpen: false,
  drainPumpOn: false,
  exchangerPumpOn: false,
  expiresInMs: 60_000,
};

interface Feedback {
  readonly pumpFraction: number;
  readonly drainOpen: boolean;
  readonly expired: boolean;
  readonly ignored: number;
}

let folder: TemporaryFolder;
let device: Program | undefined;
beforeEach(() => {
  folder = temporaryFolder('device');
});
afterEach(async () => {
  if (device?.hasEnded() === false) await device.stop();
  device = undefined;
  folder.remove();
});

async function startDevice(args: readonly string[]): Promise<Program> {
  device = startNode('sim/device/main.ts', args);
  await device.line(/^device ready$/);
  return device;
}

describe('the device on a broker', () => {
  let port: number;
  let broker: { stop(): Promise<void> };
  let client: MqttClient;
  let heard: { readonly topic: string; readonly said: unknown; readonly retained: boolean }[];

  beforeEach(async () => {
    port = await freePort();
    broker = await startBroker(port);
    heard = [];
    client = await mqtt.connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 100 });
    client.on('message', (topic, payload, { retain }) => {
      heard.push({ topic, said: JSON.parse(payload.toString()), retained: retain });
    });
    await client.subscribeAsync([topics.deviceReadings, topics.deviceFeedback, topics.deviceStatus]);
  });
  afterEach(async () => {
    await client.endAsync(true);
    await broker.stop();
  });

  const run = (...more: string[]) =>
    startDevice(['--site', siteFile, '--broker', `mqtt://127.0.0.1:${port}`, '--weather', 'clear', ...more]);
  const newest = (topic: string) => heard.findLast((message) => message.topic === topic)?.said;
  const feedback = () => newest(topics.deviceFeedback) as Feedback | undefined;
  const readings = () => newest(topics.deviceReadings) as { values: Record<string, number> } | undefined;
  const say = (topic: string, message: unknown, retain = false) =>
    client.publishAsync(topic, typeof message === 'string' ? message : JSON.stringify(message), { retain });
  const safe = (said: Feedback | undefined) => said?.pumpFraction === 0 && said.drainOpen && said.expired;

  it('starts safe, obeys, and falls safe when it is not told again', async () => {
    await run();
    await until('a safe start', () => safe(feedback()));
    await say(topics.deviceOutputs, { ...pumpOn, expiresInMs: 1000 });
    await until('the pump to run', () => feedback()?.pumpFraction === 1 && feedback()?.drainOpen === false);
    await until('the outputs to expire', () => safe(feedback()));
  });

  it('keeps what is renewed, sends plausible readings of every sensor, and says that it is there', async () => {
    await run('--speed', '60');
    await until('readings', readings);
    const renewal = setInterval(() => void say(topics.deviceOutputs, pumpOn), 300);
    await until('flow and a rising level', () => {
      const values = readings()?.values ?? {};
      return (values['flowLMin'] ?? 0) > 20 && (values['panLevelMm'] ?? 0) > 5;
    });
    clearInterval(renewal);
    expect(Object.keys(readings()?.values ?? {})).toHaveLength(13);
    expect(heard.filter(({ topic, retained }) => topic === topics.deviceReadings && retained)).toEqual([]);
    expect(newest(topics.deviceStatus)).toEqual({ schema: 1, state: 'online' });
    await device?.stop();
    await until('its farewell', () => (newest(topics.deviceStatus) as { state: string }).state === 'stopped');
  });

  it('refuses retained outputs, left from before or told now', async () => {
    await say(topics.deviceOutputs, pumpOn, true);
    await run();
    await until('the refusal to be counted', () => (feedback()?.ignored ?? 0) >= 1);
    expect(safe(feedback())).toBe(true);
    expect(device?.output()).toContain('retained');
    await say(topics.deviceOutputs, { ...pumpOn, sequence: 2 });
    await until('an honest message to be obeyed', () => feedback()?.pumpFraction === 1);
  });

  it('ignores and counts garbage, and obeys the next good message', async () => {
    await run();
    await until('feedback', feedback);
    const garbage = [
      'not json',
      '',
      '{}',
      'null',
      '[[[[',
      { ...pumpOn, schema: 2 },
      { ...pumpOn, pumpFraction: 1.5 },
      { ...pumpOn, pumpFraction: '1' },
      { ...pumpOn, expiresInMs: 1e12 },
      { ...pumpOn, more: true },
      'x'.repeat(100_000),
    ];
    for (const message of garbage) await say(topics.deviceOutputs, message);
    await say(topics.deviceFault, { schema: 1, name: 'sensor-open', active: true });
    await until('all to be counted', () => feedback()?.ignored === garbage.length + 1);
    expect(safe(feedback())).toBe(true);
    await say(topics.deviceOutputs, pumpOn);
    await until('the good message to be obeyed', () => feedback()?.pumpFraction === 1);
  });

  it('has a fault that is switched on, until it is switched off', async () => {
    await run();
    await until('readings', readings);
    const fault = { schema: 1, name: 'sensor-open', channel: 'panOutletC' };
    await say(topics.deviceFault, { ...fault, active: true });
    await until('the open circuit', () => readings()?.values['panOutletC'] === 999);
    await say(topics.deviceFault, { ...fault, active: false });
    await until('a temperature again', () => (readings()?.values['panOutletC'] ?? 999) < 100);
  });

  it('has a fault from one time of its clock until another, and counts one that cannot be', async () => {
    // A minute of its clock in a second; the Azores show UTC in summer.
    const clock = formatAnchor({ showsMs: Date.UTC(2031, 5, 21, 12), atWallMs: Date.now(), speed: 60 });
    await run('--clock', clock);
    await until('readings', readings);
    const fault = { schema: 1, name: 'sensor-open', channel: 'panOutletC', active: true };
    await say(topics.deviceFault, { ...fault, from: '12:05', until: '12:08' });
    await say(topics.deviceFault, { ...fault, from: 'noon' });
    await say(topics.deviceFault, { ...fault, channel: 'reservoirC' });
    await say(topics.deviceFault, { ...fault, name: 'half-flow', channel: undefined, size: 7 });
    await until('the refusals to be counted', () => feedback()?.ignored === 3);
    await until('the open circuit', () => readings()?.values['panOutletC'] === 999);
    await until('a temperature again', () => (readings()?.values['panOutletC'] ?? 999) < 100);
    const open = heard
      .filter(({ topic }) => topic === topics.deviceReadings)
      .map(({ said }) => said as { atMs: number; values: Record<string, number> })
      .filter(({ values }) => values['panOutletC'] === 999);
    for (const { atMs } of open) {
      expect(atMs).toBeGreaterThanOrEqual(Date.UTC(2031, 5, 21, 12, 5));
      expect(atMs).toBeLessThan(Date.UTC(2031, 5, 21, 12, 8));
    }
  });

  it('says nothing and obeys nothing while its power is gone', async () => {
    await run('--speed', '10');
    await until('readings', readings);
    const cut = { schema: 1, name: 'power-cut', active: true };
    await say(topics.deviceFault, cut);
    await say(topics.deviceFault, { schema: 1, name: 'no such fault', active: true });
    await until('the first fault to be taken', () => device?.output().includes('not a message'));
    heard.length = 0;
    await say(topics.deviceOutputs, { ...pumpOn, expiresInMs: 600_000 });
    await sleep(1500);
    expect(heard).toEqual([]);
    await say(topics.deviceFault, { ...cut, active: false });
    const first = await until('its first word after that', feedback);
    expect(safe(first)).toBe(true);
    await until('readings', readings);
    await say(topics.deviceOutputs, pumpOn);
    await until('the pump to run', () => feedback()?.pumpFraction === 1);
  });

  it('falls safe while the broker is away, and comes back by itself', async () => {
    await run();
    // Told again and again: on a busy machine a second may pass before anybody looks.
    await until('the pump to run', async () => {
      await say(topics.deviceOutputs, { ...pumpOn, expiresInMs: 1000 });
      return feedback()?.pumpFraction === 1;
    });
    await broker.stop();
    await until('the device to lose it', () => device?.output().includes('broker'));
    heard.length = 0;
    broker = await startBroker(port);
    const first = await until('its first word after that', feedback);
    expect(safe(first)).toBe(true);
    await say(topics.deviceOutputs, pumpOn);
    await until('the pump to run again', () => feedback()?.pumpFraction === 1);
  });

  it('goes on where it stopped', async () => {
    const file = folder.file('plant.json');
    await run('--speed', '60', '--plant-state', file);
    const renewal = setInterval(() => void say(topics.deviceOutputs, pumpOn), 300);
    await until('some water in the pan', () => (readings()?.values['panLevelMm'] ?? 0) > 8);
    clearInterval(renewal);
    const ending = await device?.stop();
    expect(ending).toEqual({ code: 0, signal: null });
    heard.length = 0;
    await run('--plant-state', file);
    const first = await until('readings', readings);
    expect(first.values['panLevelMm']).toBeGreaterThan(5);
  });
});

describe('the device on a serial line', () => {
  it('sends readings and feedback, obeys outputs, and outlives garbage and a pulled plug', async () => {
    const line = await openSerialLine();
    try {
      const site = writeSite(folder.file('site.yaml'), serialContent(line.devicePath));
      let end = openEnd(line.controllerPath);
      await startDevice(['--site', site]);
      await until('readings and feedback', () => end.newest('readings') && end.newest('feedback'));
      const frame = { kind: 'outputs', pumpFraction: 1, drainOpen: false, drainPumpOn: false } as const;
      const told = { ...frame, exchangerPumpOn: false, expiresInMs: 60_000 };
      end.write(Buffer.from('!!\u0000garbage*FFFF\n!O 1 pump=1*0000\nhalf a li'));
      end.write(encodeFrame({ ...told, sequence: 7 }));
      await until('the pump to run', () => end.newest('feedback')?.pumpFraction === 1);
      // An old number is a message that lay about somewhere: not obeyed.
      end.write(encodeFrame({ ...told, sequence: 6, pumpFraction: 0 }));
      end.clear();
      expect((await until('feedback', () => end.newest('feedback'))).pumpFraction).toBe(1);
      await end.close();
      await line.unplug();
      await until('the device to notice', () => device?.output().includes('trying again'));
      await line.replug();
      end = openEnd(line.controllerPath);
      await until('its hello', () => end.newest('hello'));
      end.write(encodeFrame({ ...told, sequence: 0, pumpFraction: 0.5 }));
      await until('the pump at half speed', () => end.newest('feedback')?.pumpFraction === 0.5);
      await end.close();
    } finally {
      await device?.stop();
      await line.remove();
    }
  });
});

it('answers a hello on a serial line, and does not obey a controller of another version', async () => {
  const line = await openSerialLine();
  try {
    const site = writeSite(folder.file('site.yaml'), serialContent(line.devicePath));
    const end = openEnd(line.controllerPath);
    await startDevice(['--site', site]);
    await until('feedback', () => end.newest('feedback'));
    const sayHello = async (version: number) => {
      end.clear();
      end.write(encodeFrame({ kind: 'hello', sequence: 0, version, role: 'controller' }));
      expect((await until('its hello', () => end.newest('hello'))).role).toBe('device');
    };
    const run = { pumpFraction: 1, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false };
    const outputs = { kind: 'outputs', ...run, expiresInMs: 60_000 } as const;

    await sayHello(2);
    end.write(encodeFrame({ ...outputs, sequence: 1 }));
    end.clear();
    expect((await until('feedback', () => end.newest('feedback'))).pumpFraction).toBe(0);
    await sayHello(1);
    end.write(encodeFrame({ ...outputs, sequence: 2 }));
    await until('the pump to run', () => end.newest('feedback')?.pumpFraction === 1);
    await end.close();
  } finally {
    await device?.stop();
    await line.remove();
  }
});

it('has its faults on a serial line as well, and answers nobody without power', async () => {
  const line = await openSerialLine();
  try {
    const site = writeSite(folder.file('site.yaml'), serialContent(line.devicePath));
    const end = openEnd(line.controllerPath);
    await startDevice(['--site', site, '--fault', 'sensor-short:storeTopC']);
    const top = () => end.newest('readings')?.values['storeTopC'];
    await until('the short circuit', () => top() === 'short-circuit');
    await device?.stop();
    end.clear();
    await startDevice(['--site', site, '--fault', 'power-cut']);
    end.write(encodeFrame({ kind: 'hello', sequence: 0, version: 1, role: 'controller' }));
    await sleep(1500);
    expect([end.newest('hello'), end.newest('readings'), end.newest('feedback')]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    await end.close();
  } finally {
    await device?.stop();
    await line.remove();
  }
});

async function startBroker(port: number): Promise<{ stop(): Promise<void> }> {
  const aedes = await Aedes.createBroker();
  const server: Server = createServer(aedes.handle);
  const sockets = new Set<Socket>();
  server.on('connection', (socket) => sockets.add(socket));
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  let stopped = false;
  return {
    stop: async () => {
      if (stopped) return;
      stopped = true;
      for (const socket of sockets) socket.destroy();
      await new Promise<void>((resolve) => server.close(() => resolve()));
      await new Promise<void>((resolve) => aedes.close(() => resolve()));
    },
  };
}

type FrameOf<Kind extends SerialFrame['kind']> = Extract<SerialFrame, { kind: Kind }>;

/** The controller's end of a serial line, bare. */
function openEnd(path: string) {
  const port = new SerialPort({ path, baudRate: 115_200 });
  const parser = createFrameParser();
  let frames: SerialFrame[] = [];
  port.on('data', (bytes: Buffer) => {
    for (const item of parser.push(bytes)) if (item.ok) frames.push(item.frame);
  });
  port.on('error', () => undefined);
  return {
    newest: <Kind extends SerialFrame['kind']>(kind: Kind) =>
      frames.findLast((frame): frame is FrameOf<Kind> => frame.kind === kind),
    clear: () => {
      frames = [];
    },
    write: (bytes: Uint8Array) => port.write(bytes),
    close: () => new Promise<void>((resolve) => port.close(() => resolve())),
  };
}
