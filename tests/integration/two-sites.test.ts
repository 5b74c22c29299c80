import { connectAsync } from 'mqtt';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createHost, type MonitorHost } from '../../desktop/host/host.ts';
import { siteTopics } from '../../shared-types/messages.ts';
import type { MonitorEvent, SiteLive } from '../../shared-types/monitor-api.ts';
import { type MosquittoBroker, startMosquitto } from '../support/mosquitto.ts';
import type { Program } from '../support/process.ts';
import {
  clearNoonMs,
  clockFrom,
  type LoopFlags,
  startController,
  startDevice,
} from '../support/running-loop.ts';
import { demoContent, type SiteContent, writeSite } from '../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../support/temporary.ts';
import { until } from '../support/wait.ts';

const first = 'quillhaven-wash-house';
const second = 'quillhaven-annex';

/** Two controllers with a device each, all on one broker, and a monitor that holds the log of the first alone. */
describe('two sites on one broker', () => {
  let broker: MosquittoBroker;
  let folder: TemporaryFolder;
  let host: MonitorHost;
  const programs: Record<string, { controller: Program; device: Program }> = {};
  const events: MonitorEvent[] = [];

  async function startLoop(name: string): Promise<void> {
    const flags: LoopFlags = {
      siteFile: writeSite(folder.file(`${name}.yaml`), siteThrough(broker, name)),
      dataFolder: folder.file(name),
      clock: clockFrom(clearNoonMs, 60),
      device: [
        ...['--broker', broker.url, '--username', 'device'],
        ...['--password-file', broker.passwordFile('device')],
      ],
    };
    const [device, controller] = await Promise.all([startDevice(flags), startController(flags)]);
    programs[name] = { controller, device };
  }

  beforeAll(async () => {
    folder = temporaryFolder('two-sites');
    broker = await startMosquitto();
    host = createHost({
      brokerUrl: broker.url,
      username: 'monitor',
      passwordFile: broker.passwordFile('monitor'),
      dataFolder: folder.file(first),
    });
    host.listen((event) => events.push(event));
    await Promise.all([first, second].map(startLoop));
  });
  afterAll(async () => {
    const all = Object.values(programs).flatMap(({ controller, device }) => [controller, device]);
    await Promise.all(all.map((program) => program.hasEnded() || program.stop('SIGKILL')));
    await host.close();
    await broker.stop();
    folder.remove();
  });

  const live = async (name: string): Promise<SiteLive | undefined> => {
    const reply = await host.call('sites', {});
    return reply.ok ? reply.result.find((site) => site.name === name) : undefined;
  };
  const decisionOf = async (name: string) => (await live(name))?.snapshot?.decision;

  it('are both heard, each with what it is', async () => {
    for (const name of [first, second])
      await until(`readings of ${name}`, async () => {
        const reading = (await decisionOf(name))?.belief.readings.storeBottomC;
        return reading?.quality === 'good';
      });
    expect((await live(second))?.site?.site.title).toBe(`The annex of <b>${second}</b>`);
    expect((await live(first))?.site?.site.title).not.toContain('annex');
  });

  it('are asked one by one: a request reaches the one it is for', async () => {
    const reply = await host.call('request', { site: second, operation: { kind: 'rest', minutes: 600 } });
    expect(reply).toMatchObject({ ok: true, result: { accepted: true } });
    await until('the lease in the snapshot', async () => (await decisionOf(second))?.lease?.kind === 'rest');
    expect((await decisionOf(first))?.lease ?? null).toBeNull();
  });

  it('have their own history, and the one whose log is elsewhere says so', async () => {
    const days = await host.call('days', { site: first });
    expect(days.ok && days.result.length).toBeGreaterThan(0);
    expect(await host.call('days', { site: second })).toMatchObject({
      ok: false,
      problem: { severity: 'note', text: `There is no log of ${second} on this machine.` },
    });
  });

  it('go one by one: lost, then forgotten when the broker is told to, the other untouched', async () => {
    await programs[second]?.controller.stop('SIGKILL');
    await until('its last will', async () => (await live(second))?.status?.state === 'lost');
    expect((await live(first))?.status?.state).toBe('online');
    expect(await host.call('request', { site: second, operation: { kind: 'automatic' } })).toMatchObject({
      ok: false,
      problem: { text: expect.stringContaining('not running') },
    });
    const client = await connectAsync(broker.url, {
      username: 'controller',
      password: broker.password('controller'),
    });
    const { snapshot, status, site } = siteTopics(second);
    for (const topic of [snapshot, status, site])
      await client.publishAsync(topic, '', { retain: true, qos: 1 });
    await client.endAsync();
    await until('the news of it', () =>
      events.some((event) => event.kind === 'gone' && event.site === second),
    );
    expect(await live(second)).toBeUndefined();
    expect((await live(first))?.status?.state).toBe('online');
  });
});

/** The demo's site under another name, its device and its monitor on the broker. */
function siteThrough(broker: MosquittoBroker, name: string): SiteContent {
  const access = { url: broker.url, username: 'controller', passwordFile: broker.passwordFile('controller') };
  const { link, title, ...content } = demoContent({ broker: undefined, publish: access });
  const renamed = JSON.parse(JSON.stringify({ ...content, link }).replaceAll(first, name));
  return {
    ...renamed,
    title: name === first ? title : `The annex of <b>${name}</b>`,
    link: { ...renamed.link, ...access },
  };
}
