import mqtt, { type MqttClient } from 'mqtt';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inLine, numberFormats } from '../../desktop/ui/format/numbers.ts';
import { en } from '../../desktop/ui/text/en.ts';
import type { Channel } from '../../shared-types/channels.ts';
import { channelMeaning } from '../../shared-types/channels.ts';
import { type SnapshotMessage, siteTopics, snapshotMessageSchema } from '../../shared-types/messages.ts';
import { type House, startHouse } from '../support/running-house.ts';
import { until } from '../support/wait.ts';

const siteName = 'quillhaven-wash-house';
const topics = siteTopics(siteName);
const formats = numberFormats({ temperature: 'C', heat: 'kWh' }, 'en-GB');

/** Every sensor row of Live, taken at one instant, as text. */
const readRows = `Object.fromEntries([...document.querySelectorAll('[data-channel]')].map(
  (row) => [row.dataset.channel, row.querySelector('dd > span').textContent]))`;

/** What Live has to show of a snapshot. */
function rowsOf({ decision }: SnapshotMessage): Record<string, string> {
  const rows: Record<string, string> = {};
  for (const [name, reading] of Object.entries(decision.belief.readings)) {
    const { unit } = channelMeaning[name as Channel];
    rows[name] =
      reading.quality === 'failed' ? en.live.readings.failed : inLine(formats.channel(unit, reading.value));
  }
  return rows;
}

describe('the whole house in a real browser', () => {
  const snapshots: SnapshotMessage[] = [];
  let house: House;
  let page: Page;
  let client: MqttClient;

  async function listenAt(broker: string): Promise<void> {
    client = await mqtt.connectAsync(broker);
    client.on('message', (_topic, payload) => {
      snapshots.push(snapshotMessageSchema.parse(JSON.parse(payload.toString())));
    });
    await client.subscribeAsync(topics.snapshot);
  }

  beforeAll(async () => {
    house = await startHouse('', {
      changes: { control: { stepS: 1 }, settings: { leastOffS: 0 } },
      from: '2031-06-21T15:00:00Z',
      speed: 5,
      viewport: { width: 1280, height: 900 },
      onBroker: listenAt,
    });
    ({ page } = house);
  });
  afterAll(async () => {
    await client?.endAsync();
    await house?.stop();
  });

  const newest = () => snapshots.at(-1)?.decision;

  it('shows on Live the numbers that the snapshot topic carries', async () => {
    await page.waitForSelector('[data-channel="storeBottomC"]');
    const matched = await until('a screen that equals a snapshot, every sensor of it', async () => {
      const shown = await page.evaluate<Record<string, string>>(readRows);
      const same = snapshots.some((snapshot) => {
        const rows = rowsOf(snapshot);
        return Object.keys(rows).every((channel) => rows[channel] === shown[channel]);
      });
      return same ? shown : undefined;
    });
    expect(Object.keys(matched)).toHaveLength(Object.keys(newest()?.belief.readings ?? {}).length);
    expect(matched['storeBottomC']).toMatch(/^\d+\.\d.°C$/);
  });

  it("shows the engine's own sentence for what it does", async () => {
    await until('the sentence of a snapshot on the screen', async () => {
      const text = (await page.locator('main').textContent()) ?? '';
      return snapshots.slice(-20).some(({ decision }) => text.includes(decision.reasons.phase.text));
    });
  });

  it('changes the pump by a request, and says what the controller answered', async () => {
    // A full pan, as the device proves it, so that the pump may run at once.
    await until('a controller that knows its pan', () => newest()?.belief.water === 'empty', 60_000);
    expect(newest()?.outputs.pumpFraction).toBe(0);
    await page.getByRole('button', { name: en.requests.runPump.button }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('button', { name: en.requests.confirm(en.requests.runPump.button) }).click();
    await page.getByText(/^Accepted/).waitFor();
    await until('a pump that runs', () => newest()?.outputs.pumpFraction === 1);
    expect(newest()?.reasons.phase.code).toBe('operator-run');
  });

  it('opens a logged day in Replay and finds the same decisions', async () => {
    await page.goto(`${page.url().split('#')[0]}#/replay/2031-06-21`);
    await page.getByRole('button', { name: en.replay.run }).click();
    await page.getByText(/The same decisions, all [\d,]+ of them\.$/).waitFor();
  });
});
