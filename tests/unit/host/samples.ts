import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { Decision, Totals } from '../../../shared-types/engine.ts';
import type { DayCurves } from '../../../shared-types/log.ts';
import type { SiteMessage, SnapshotMessage } from '../../../shared-types/messages.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { siteSchema } from '../../../shared-types/site.ts';

/** Messages as a controller would send them; the numbers mean nothing. */
export const siteName = 'quillhaven-wash-house';

const totals: Totals = { heatHomeJ: 0, heatLostJ: 0, electricityJ: 0, pumpRunS: 0, starts: 0, fills: 0 };
const waiting = { code: 'waiting-for-sun', values: {}, text: 'Waiting for sun.' } as const;

const decision = (nowMs: number): Decision => ({
  nowMs,
  phase: 'empty',
  phaseForMs: 1000,
  outputs: { pumpFraction: 0, drainOpen: true, drainPumpOn: false, exchangerPumpOn: false },
  reasons: { phase: waiting, pump: waiting, drain: waiting },
  lease: null,
  alarms: [],
  meter: {
    total: totals,
    today: totals,
    heatRateW: null,
    flowLMin: null,
    estimated: false,
    errorFraction: null,
    estimatedJ: 0,
  },
  belief: {
    readings: { storeBottomC: { quality: 'good', value: 21.5, ageMs: 300 } },
    water: 'empty',
    flowProven: false,
    differenceK: null,
    pair: { offsetK: 0, sdK: 1 },
    netGainW: null,
    heatAtStakeJ: null,
    dayPromiseJ: null,
    timeToFreezingS: null,
  },
  commissioning: null,
  learnt: {},
  answer: null,
});

export const snapshot = (change: Partial<SnapshotMessage> = {}): SnapshotMessage => ({
  schema: 1,
  site: siteName,
  sequence: 1,
  run: 1,
  clockSpeed: 1,
  simulatedClock: false,
  settingsRevision: 1,
  link: { kind: 'mqtt', connected: true, taken: 1, ignored: 0, lastIgnored: null, losses: 0 },
  device: null,
  log: { writable: true, remark: null },
  engineVersion: '1',
  decision: decision(1_000_000),
  ...change,
});

export const siteMessage = (): SiteMessage => ({
  schema: 1,
  site: siteSchema.parse(
    parse(
      readFileSync(new URL('../../../sim/scenarios/quillhaven-wash-house.yaml', import.meta.url), 'utf8'),
    ),
  ),
  siteRevision: 1,
  settings: defaultSettings,
  settingsRevision: 1,
});

/** Curves of one column that follows `value`, a row every 5 s. */
export const curves = (rows: number, value: (row: number) => number | null): DayCurves => {
  const column = Array.from({ length: rows }, (_, row) => row);
  return {
    day: '2031-06-21',
    atMs: column.map((row) => row * 5000),
    series: { panOutletC: column.map(value) },
    pumpFraction: column.map(() => 0),
    heatTodayJ: column,
    phases: [],
    events: [],
  };
};

export const bytes = (message: unknown) => new TextEncoder().encode(JSON.stringify(message));
