import { safeOutputs } from '../../controller/engine/index.ts';
import { readSiteFile } from '../../controller/site-file.ts';
import type { Outputs } from '../../shared-types/engine.ts';
import type { Site } from '../../shared-types/site.ts';
import { emptyAccount } from '../../sim/plant/account.ts';
import { advance } from '../../sim/plant/advance.ts';
import { readSensors } from '../../sim/plant/sensors.ts';
import { createPlant } from '../../sim/plant/state.ts';
import { simulateSpan } from '../../sim/simulate/span.ts';
import { createWeather } from '../../sim/weather/weather.ts';
import { report } from './figure.ts';

const demoSite = 'sim/scenarios/quillhaven-wash-house.yaml';
const fromMs = Date.parse('2031-01-01T00:00:00Z');
const stepS = 10;
const stepsADay = 86_400 / stepS;
const seed = 1;

const running: Outputs = { ...safeOutputs, pumpFraction: 1, drainOpen: false };

/** The loop alone under a fixed rule: weather, plant and sensors, full by day and empty by night. */
function plantAlone(site: Site, days: number): void {
  const weather = createWeather({ location: site.location, seed });
  const plant = createPlant(site, { waterC: 20, panC: 10 });
  const account = emptyAccount();
  for (let step = 1; step <= days * stepsADay; step++) {
    const conditions = weather.at(fromMs + step * stepS * 1000);
    const byDay = conditions.solarHour > 8.5 && conditions.solarHour < 16.5;
    advance(plant, byDay ? running : safeOutputs, conditions, stepS, undefined, account);
    readSensors(plant, seed);
  }
}

function plantAndEngine(site: Site, days: number, onDay?: (day: number) => void): void {
  simulateSpan({
    site,
    plant: createPlant(site, { waterC: 20, panC: 10 }),
    weather: createWeather({ location: site.location, seed }),
    seed,
    fromMs,
    days,
    stepS,
    ...(onDay === undefined ? {} : { onDay }),
  });
}

function heapMb(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 1e6;
}

/** Simulated days a second on one core, with and without the engine, and the memory of a year. */
export async function benchSimulate(): Promise<void> {
  const read = readSiteFile(demoSite);
  if (!read.ok) throw new Error(`${demoSite} is not a site file`);
  const { site } = read;
  plantAlone(site, 10);
  plantAndEngine(site, 10);
  const pieces = 5;
  const days = 20;
  let aloneMs = 0;
  let bothMs = 0;
  // Turn and turn about, so that whatever else the machine does falls on both.
  for (let piece = 0; piece < pieces; piece++) {
    aloneMs += timeOf(() => plantAlone(site, days));
    bothMs += timeOf(() => plantAndEngine(site, days));
  }
  const daysPerS = (ms: number) => (pieces * days * 1000) / ms;
  report({ bench: 'simulate', figure: 'plant alone', value: daysPerS(aloneMs), unit: 'days/s' });
  report({
    bench: 'simulate',
    figure: 'plant and engine',
    value: daysPerS(bothMs),
    unit: 'days/s',
    atLeast: 100,
  });
  report({
    bench: 'simulate',
    figure: 'plant and engine over plant alone',
    value: bothMs / aloneMs,
    unit: '1',
    atMost: 1.5,
  });
  const heap: number[] = [];
  plantAndEngine(site, 365, (day) => {
    if (day === 30 || day === 365) heap.push(heapMb());
  });
  const grownMb = (heap.at(-1) ?? Number.NaN) - (heap[0] ?? Number.NaN);
  const figure = 'heap grown from day 30 to day 365 of a year';
  report({ bench: 'simulate', figure, value: grownMb, unit: 'MB', atMost: 1 });
}

function timeOf(work: () => void): number {
  const startMs = performance.now();
  work();
  return performance.now() - startMs;
}
