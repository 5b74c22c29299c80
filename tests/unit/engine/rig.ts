import { type EngineState, initialState, step } from '../../../controller/engine/index.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { Decision, Feedback, Operation, PhaseName } from '../../../shared-types/engine.ts';
import type { RawReading, RawReadings } from '../../../shared-types/readings.ts';
import { defaultSettings, type Settings } from '../../../shared-types/settings.ts';
import { type Site, siteSchema } from '../../../shared-types/site.ts';

export const siteKinds = ['drain-valve', 'pump-stop', 'corner', 'drain-pump'] as const;
export type SiteKind = (typeof siteKinds)[number];

const kinds = {
  'drain-valve': { outlet: 'high-with-low-drain', drain: 'drain-valve' },
  'pump-stop': { outlet: 'low', drain: 'pump-stop' },
  corner: { outlet: 'corner', drain: 'none' },
  'drain-pump': { outlet: 'high-with-low-drain', drain: 'drain-pump' },
} as const satisfies Record<SiteKind, object>;

const units: Partial<Record<Channel, string>> = {
  flowLMin: 'L/min',
  panLevelMm: 'mm',
  reservoirLevelMm: 'mm',
  pumpPowerW: 'W',
};

export const commonSensors: readonly Channel[] = [
  'panOutletC',
  'panSheetC',
  'panInletC',
  'storeBottomC',
  'storeTopC',
  'ambientC',
];
export const allSensors: readonly Channel[] = [...commonSensors, 'flowLMin', 'panLevelMm', 'pumpPowerW'];

/** A loop of 10 m2 and 40 mm: 400 L, filled at 20 L/min. */
export function makeSite(kind: SiteKind, sensors = commonSensors, changes: object = {}): Site {
  return siteSchema.parse({
    schema: 1,
    name: 'bench-loop',
    title: 'Bench loop',
    timeZone: 'Etc/UTC',
    location: { latitudeDeg: 40, longitudeDeg: -30, elevationM: 10 },
    pan: { grossAreaM2: 10.2, wettedAreaM2: 10, waterDepthM: 0.04, linerLimitC: 80 },
    plumbing: 'open-store',
    ...kinds[kind],
    pump: { ratedFlowLMin: 20, ratedHeadM: 3, ratedPowerW: 50 },
    store: { volumeL: 800, headroomL: 500, heightM: 1.2, maximumC: 80 },
    sensors: Object.fromEntries(
      sensors.map((channel) => [channel, { key: channel, unit: units[channel] ?? 'C' }]),
    ),
    link: { kind: 'serial', path: '/dev/bench' },
    ...changes,
  });
}

export type Values = Partial<Record<Channel, number | RawReading>>;

/** Times that keep the tests short; every coupling between settings holds. */
export const quickSettings: Settings = {
  ...defaultSettings,
  startDifferenceK: 6,
  stopDifferenceK: 2,
  fillDifferenceK: 10,
  startDelayS: 20,
  stopDelayS: 20,
  fillDelayS: 30,
  fillTimeS: 100,
  fillTimeoutS: 200,
  drainTimeS: 60,
  leastOnS: 30,
  leastOffS: 30,
};

const calm: Values = {
  panOutletC: 20,
  panSheetC: 20,
  panInletC: 20,
  storeBottomC: 20,
  storeTopC: 25,
  ambientC: 15,
};

/** A loop of which a test sets the readings, and which steps its engine. */
export class Loop {
  readonly site: Site;
  settings: Settings;
  values: Values = { ...calm };
  feedback: Feedback | null = null;
  localDay = '2031-06-21';
  nowMs = Date.UTC(2031, 5, 21, 9);
  state: EngineState = initialState();
  readonly decisions: Decision[] = [];
  private started = false;
  private asked = 0;

  constructor(site: Site, settings: Partial<Settings> = {}) {
    this.site = site;
    this.settings = { ...quickSettings, ...settings };
  }

  get last(): Decision {
    const decision = this.decisions.at(-1);
    if (decision === undefined) throw new Error('the loop has not stepped');
    return decision;
  }

  get phase(): PhaseName {
    return this.last.phase;
  }

  get why() {
    return this.last.reasons.phase.code;
  }

  set(values: Values): this {
    this.values = { ...this.values, ...values };
    return this;
  }

  without(...channels: Channel[]): this {
    this.values = Object.fromEntries(
      Object.entries(this.values).filter(([channel]) => !channels.includes(channel as Channel)),
    );
    return this;
  }

  step(elapsedS: number | null = 5, request: unknown = null): this {
    const elapsedMs = this.started && elapsedS !== null ? elapsedS * 1000 : null;
    this.started = true;
    this.nowMs += (elapsedS ?? 0) * 1000;
    const { nowMs, localDay, feedback } = this;
    const input = { nowMs, elapsedMs, localDay, readings: this.readings(), feedback, request };
    const next = step(this.state, input as Parameters<typeof step>[1], this.site, this.settings);
    this.state = next.state;
    this.decisions.push(next.decision);
    return this;
  }

  run(seconds: number, stepS = 5): this {
    for (let atS = 0; atS < seconds; atS += stepS) this.step(stepS);
    return this;
  }

  /** Steps until the phase is reached. @throws Error when it is not within `mostS`. */
  until(phase: PhaseName, mostS = 1200): this {
    for (let atS = 0; atS <= mostS; atS += 5) if (this.step().phase === phase) return this;
    throw new Error(`no ${phase} within ${mostS} s, but ${this.phase} (${this.why})`);
  }

  ask(operation: Operation, changes: object = {}) {
    this.asked++;
    this.step(1, { id: `request-${this.asked}`, ageMs: 100, lifeMs: 10_000, operation, ...changes });
    return this.last.answer;
  }

  alarm(code: string) {
    return this.last.alarms.find((alarm) => alarm.code === code);
  }

  private readings(): RawReadings {
    return Object.fromEntries(
      Object.entries(this.values).map(([channel, value]) => [
        channel,
        typeof value === 'number' ? { value, ageMs: 100 } : value,
      ]),
    );
  }
}

/** Sensors that were compared, so that no fill has to be waited for to do so. */
const compared = { outletOffsetK: 0, outletOffsetSdK: 0.2 };

/** A loop whose pan is proven empty, or that rests with unknown water where it cannot be emptied. */
export function emptyLoop(site: Site, settings: Partial<Settings> = {}): Loop {
  const loop = new Loop(site, settings);
  loop.state = { ...loop.state, learnt: compared };
  return site.drain === 'none' ? loop.until('resting').run(60) : loop.until('empty');
}

/** A loop that has filled for heat and circulates, 5 K above the stop difference. */
export function circulatingLoop(site: Site, settings: Partial<Settings> = {}): Loop {
  const loop = emptyLoop(site, settings).set({ panSheetC: 40, panOutletC: 40 }).until('filling');
  loop.set({ panSheetC: 27, panOutletC: 27 });
  if (site.sensors.flowLMin !== undefined) loop.set({ flowLMin: 20 });
  if (site.sensors.panLevelMm !== undefined) loop.run(50).set({ panLevelMm: 40 });
  return loop.until('circulating');
}

/** A loop whose full pan rests after the stop difference was reached. */
export function restingLoop(site: Site, settings: Partial<Settings> = {}): Loop {
  const loop = circulatingLoop(site, settings).set({ panSheetC: 21.5, panOutletC: 21.5 });
  return loop.until('resting').set({ flowLMin: 0 });
}

/** A copy of `json` with the value at `path` replaced. */
export function disturb(json: object, path: readonly string[], value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  const copy: Record<string, unknown> = Array.isArray(json) ? ([...json] as never) : { ...json };
  copy[key] = disturb(copy[key] as object, rest, value);
  return copy;
}
