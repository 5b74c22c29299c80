import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LinkReport, LoopLink } from '../../../controller/links/link.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { OutputMessage } from '../../../shared-types/messages.ts';
import type { ManualClock } from '../../support/manual-clock.ts';
import { sleep, until } from '../../support/wait.ts';

export type HeardOutputs = Omit<OutputMessage, 'schema' | 'sequence'>;

/** A link and the other end of it. The far end stands for the device; the way between can be cut. */
export interface LinkRig {
  /** Not open yet. */
  readonly link: LoopLink;
  readonly clock: ManualClock;
  readonly reports: LinkReport[];
  sendReadings(values: Readonly<Partial<Record<Channel, number>>>): Promise<void>;
  sendFeedback(pumpFraction: number, drainOpen: boolean): Promise<void>;
  /** Sends something that no link can understand. */
  sendRubbish(): Promise<void>;
  /** Outputs that arrived at the device, in order. */
  heard(): readonly HeardOutputs[];
  cut(): Promise<void>;
  restore(): Promise<void>;
  dispose(): Promise<void>;
}

const outputs = (sequence: number, pumpFraction: number): OutputMessage => ({
  schema: 1,
  sequence,
  pumpFraction,
  drainOpen: pumpFraction === 0,
  drainPumpOn: false,
  exchangerPumpOn: true,
  expiresInMs: 60_000,
});

/** Longer than the link's longest wait between attempts. */
const longestSilenceMs = 20_000;

/** What every link owes its controller, whatever lies between it and the device. */
export function linkContract(name: string, makeRig: () => Promise<LinkRig>): void {
  describe(`link contract: ${name}`, () => {
    let rig: LinkRig;
    beforeEach(async () => {
      rig = await makeRig();
    });
    afterEach(async () => {
      await rig.link.close();
      await rig.dispose();
    });

    const openAndConnect = async () => {
      await rig.link.open();
      await until('the connection', () => rig.link.health().connected, longestSilenceMs);
    };
    const read = async (channel: Channel, value: number) => {
      await rig.sendReadings({ [channel]: value });
      await until(`${channel} ${value}`, () => rig.link.readings()[channel]?.value === value);
    };

    it('knows nothing before anything is said', async () => {
      await openAndConnect();
      expect(rig.link.readings()).toEqual({});
      expect(rig.link.feedback()).toBeNull();
      expect(rig.link.health()).toMatchObject({ taken: 0, ignored: 0, lastIgnored: null, losses: 0 });
    });

    it('gives the newest reading of each channel, its age counted on its clock', async () => {
      await openAndConnect();
      await read('panOutletC', 41.25);
      rig.clock.advance(3000);
      await read('storeBottomC', 22.5);
      rig.clock.advance(4000);
      expect(rig.link.readings()).toEqual({
        panOutletC: { value: 41.25, ageMs: 7000 },
        storeBottomC: { value: 22.5, ageMs: 4000 },
      });
      await read('panOutletC', 40.5);
      expect(rig.link.readings().panOutletC).toEqual({ value: 40.5, ageMs: 0 });
    });

    it('gives what the device says of its outputs', async () => {
      await openAndConnect();
      await rig.sendFeedback(1, false);
      await until('feedback', () => rig.link.feedback());
      rig.clock.advance(2500);
      expect(rig.link.feedback()).toEqual({ pumpFraction: 1, drainOpen: false, ageMs: 2500 });
    });

    it('counts rubbish, reports it once and goes on', async () => {
      await openAndConnect();
      for (let count = 1; count <= 3; count++) {
        await rig.sendRubbish();
        await until('the rubbish to be counted', () => rig.link.health().ignored >= count);
      }
      expect(rig.reports.filter(({ kind }) => kind === 'message-ignored')).toHaveLength(1);
      expect(rig.link.health().lastIgnored).not.toBeNull();
      expect(rig.link.readings()).toEqual({});
      await read('panSheetC', 12.5);
    });

    it('brings outputs to the device as they are, in order', async () => {
      await openAndConnect();
      const left = [0, 0.5, 1].map((fraction, index) => rig.link.apply(outputs(index + 1, fraction)));
      expect(left).toEqual([true, true, true]);
      await until('three outputs', () => rig.heard().length === 3);
      expect(rig.heard()).toEqual(
        [0, 0.5, 1].map((pumpFraction) => ({
          pumpFraction,
          drainOpen: pumpFraction === 0,
          drainPumpOn: false,
          exchangerPumpOn: true,
          expiresInMs: 60_000,
        })),
      );
    });

    it('says once that it is lost, keeps readings with their growing age, and comes back', async () => {
      await openAndConnect();
      await read('panOutletC', 33.5);
      await rig.cut();
      await until('the loss', () => !rig.link.health().connected);
      rig.clock.advance(9000);
      expect(rig.link.readings().panOutletC).toEqual({ value: 33.5, ageMs: 9000 });
      await rig.restore();
      await until('the return', () => rig.link.health().connected, longestSilenceMs);
      await read('panOutletC', 34.5);
      expect(rig.link.health().losses).toBe(1);
      expect(rig.reports.map(({ kind }) => kind)).toEqual(['link-lost', 'link-back']);
    });

    it('drops outputs while it is down: none comes late', async () => {
      await openAndConnect();
      await rig.cut();
      await until('the loss', () => !rig.link.health().connected);
      expect(rig.link.apply(outputs(1, 1))).toBe(false);
      await rig.restore();
      await until('the return', () => rig.link.health().connected, longestSilenceMs);
      rig.link.apply(outputs(2, 0));
      await until('the outputs after the return', () => rig.heard().length > 0);
      expect(rig.heard().map(({ pumpFraction }) => pumpFraction)).toEqual([0]);
    });

    it('opens while the other end is away, and finds it later', async () => {
      await rig.cut();
      await rig.link.open();
      expect(rig.link.health()).toMatchObject({ connected: false, losses: 0 });
      expect(rig.reports.map(({ kind }) => kind)).toEqual(['link-lost']);
      await rig.restore();
      await until('the connection', () => rig.link.health().connected, longestSilenceMs);
      await read('ambientC', 11.25);
    });

    it('sends what was applied last before it closes, and nothing after', async () => {
      await openAndConnect();
      rig.link.apply(outputs(1, 0));
      await rig.link.close();
      await until('the last outputs', () => rig.heard().length === 1);
      expect(rig.link.apply(outputs(2, 1))).toBe(false);
      await sleep(200);
      expect(rig.heard()).toHaveLength(1);
    });

    it('closes while it is down', async () => {
      await rig.cut();
      await rig.link.open();
      await rig.link.close();
      await rig.restore();
      await sleep(1500);
      expect(rig.link.health().connected).toBe(false);
    });
  });
}
