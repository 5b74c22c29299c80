import type { Decision } from '../../../shared-types/engine.ts';
import { messageSchemaVersion, type SnapshotMessage } from '../../../shared-types/messages.ts';
import type { SiteLive } from '../../../shared-types/monitor-api.ts';
import { testSite, testSiteMessage } from './site.ts';

/** Noon of a summer day at the test site [UTC ms]. */
export const testNowMs = Date.UTC(2031, 5, 21, 13, 20, 30);

const good = (value: number, ageMs = 2000) => ({ quality: 'good' as const, value, ageMs });

/** A loop that harvests; numbers are made up and differ from each other so that a test can tell them apart. */
export const testDecision: Decision = {
  nowMs: testNowMs,
  phase: 'circulating',
  phaseForMs: 42 * 60_000,
  outputs: { pumpFraction: 1, drainOpen: false, drainPumpOn: false, exchangerPumpOn: false },
  reasons: {
    phase: {
      code: 'circulating-for-heat',
      values: { differenceK: 9.4, stopDifferenceK: 2 },
      text: 'Bringing heat home: the pan is 9.4 K above the store bottom; the pump stops at 2.0 K.',
    },
    pump: { code: 'circulating-for-heat', values: {}, text: 'The pump brings heat home.' },
    drain: { code: 'drain-closed-to-hold', values: {}, text: 'The drain is closed to hold the water.' },
  },
  lease: null,
  alarms: [],
  meter: {
    total: {
      heatHomeJ: 9.1e9,
      heatLostJ: 2.2e8,
      electricityJ: 6.1e7,
      pumpRunS: 812_000,
      starts: 912,
      fills: 201,
    },
    today: {
      heatHomeJ: 6.66e7,
      heatLostJ: 1.2e6,
      electricityJ: 5.4e5,
      pumpRunS: 12_060,
      starts: 4,
      fills: 1,
    },
    heatRateW: 5890,
    flowLMin: 13.4,
    estimated: false,
    errorFraction: null,
    estimatedJ: 0,
  },
  belief: {
    readings: {
      panOutletC: good(47.3),
      panSheetC: good(53.8),
      panInletC: good(38.6),
      storeBottomC: good(37.9),
      storeMiddleC: good(44.2),
      storeTopC: good(48.1),
      ambientC: good(22.4),
      irradianceWM2: good(874),
      windMs: good(2.6),
      humidityFraction: good(0.67),
      flowLMin: good(13.4),
      pumpPowerW: good(44),
    },
    water: 'full',
    flowProven: true,
    differenceK: 9.4,
    pair: { offsetK: 0.2, sdK: 0.4 },
    netGainW: 6200,
    heatAtStakeJ: 1.8e7,
    dayPromiseJ: null,
    timeToFreezingS: null,
  },
  commissioning: null,
  learnt: {},
  answer: null,
};

export function testSnapshot(change: Partial<Decision> = {}): SnapshotMessage {
  return {
    schema: messageSchemaVersion,
    site: testSite,
    sequence: 4711,
    run: 3,
    clockSpeed: 1,
    simulatedClock: false,
    settingsRevision: 1,
    link: { kind: 'mqtt', connected: true, taken: 9000, ignored: 0, lastIgnored: null, losses: 0 },
    device: null,
    log: { writable: true, remark: null },
    engineVersion: 'test',
    decision: { ...testDecision, ...change },
  };
}

/** The site as a monitor holds it, with what a test changes. */
export function testLive(change: Partial<SiteLive> = {}): SiteLive {
  return {
    name: testSite,
    status: { schema: messageSchemaVersion, state: 'online' },
    site: testSiteMessage(),
    snapshot: testSnapshot(),
    snapshotAgeMs: 0,
    clockAheadMs: 0,
    ...change,
  };
}
