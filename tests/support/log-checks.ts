import { expect } from 'vitest';
import { logPath } from '../../controller/log/log.ts';
import { openLogReader } from '../../controller/log/reader.ts';
import type { LogRecord } from '../../shared-types/log.ts';

/** All records of a site's log, in the order of their days. */
export function loggedRecords(dataFolder: string, site: string): LogRecord[] {
  const reader = openLogReader(logPath(dataFolder, site));
  try {
    expect(reader.remarks).toEqual([]);
    return reader.days().flatMap(({ day }) => [...reader.records(day)]);
  } finally {
    reader.close();
  }
}

/** No record is missing or there twice: within each run the steps rise by one. */
export function expectWholeLog(records: readonly LogRecord[]): void {
  const runs = Map.groupBy(records, ({ run }) => run);
  for (const ofRun of runs.values()) {
    const steps = ofRun.map(({ step }) => step);
    expect(steps).toEqual(steps.map((_, index) => (steps[0] ?? 0) + index));
  }
}

/**
 * The most heat that can come home in a second [W]: a bound of nature, not an estimate. The pump's rated
 * 24 L/min and the pan's 480 L emptied in a minute bring at most 8 L/s through 100 K of water.
 */
const mostHeatW = 8.4 * 4200 * 100;
/** Electric power of the demo's pump with room for its tolerance [W]. */
const mostPumpW = 60 * 1.5;

/** No total falls, and none rises by more in a step than its time allows. */
export function expectSteadyTotals(records: readonly LogRecord[]): void {
  for (let index = 1; index < records.length; index++) {
    const before = records[index - 1]?.outcome.total;
    const after = records[index]?.outcome.total;
    const elapsedS = (records[index]?.input.elapsedMs ?? 0) / 1000;
    if (before === undefined || after === undefined) continue;
    const rise = (name: keyof typeof after) => after[name] - before[name];
    for (const name of Object.keys(after) as (keyof typeof after)[])
      expect(rise(name), `${name} at step ${records[index]?.step}`).toBeGreaterThanOrEqual(0);
    expect(rise('pumpRunS')).toBeLessThanOrEqual(elapsedS + 1e-6);
    expect(rise('electricityJ')).toBeLessThanOrEqual(mostPumpW * elapsedS + 1e-6);
    expect(rise('heatHomeJ')).toBeLessThanOrEqual(mostHeatW * elapsedS + 1e-6);
    expect(rise('starts')).toBeLessThanOrEqual(1);
    expect(rise('fills')).toBeLessThanOrEqual(1);
  }
}
