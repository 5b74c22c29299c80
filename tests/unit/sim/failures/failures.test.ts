import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { initialState, stepOn } from '../../../../controller/engine/index.ts';
import { defaultSettings, settingsSchema } from '../../../../shared-types/settings.ts';
import { elsewhereRows } from '../../../support/failures/elsewhere-rows.ts';
import { play } from '../../../support/failures/play.ts';
import { killedIn } from '../../../support/failures/restart.ts';
import { begin, sceneOf, stepS } from '../../../support/failures/scene.ts';
import { failureRows, failures } from '../../../support/failures/table.ts';

describe('a failure in the simulated loop', () => {
  it.each(failureRows)('$failure: announces $head, $response', (row) => {
    const course = play(row);
    if (row.head === null) expect(course.announced).toEqual([]);
    else {
      expect(course.announced[0]).toBe(row.head);
      expect(course.detectedS ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(row.detectedWithinS ?? 0);
    }
    if (row.head === 'sensor-failed') expect(course.announced).toEqual(['sensor-failed']);
    // Most that one root cause may announce.
    expect(new Set(course.announced).size).toBeLessThanOrEqual(3);
    expect(course.respondedS ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(row.respondedWithinS);
    if (row.throughout === true) expect(course.lapses).toBe(0);
    if (row.harvestAtLeast !== undefined)
      expect(course.harvestFraction).toBeGreaterThanOrEqual(row.harvestAtLeast);
    if (row.panAtLeastC !== undefined)
      expect(course.lowestPanC ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(row.panAtLeastC);
    expect(course.mostIceKg).toBeLessThanOrEqual(row.iceAtMostKg ?? 0);
    if (row.recovery === undefined) return;
    expect(course.recoveredUnasked).toBe(false);
    expect(course.recoveredS ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(row.recovery.withinS);
  });
});

describe('a controller killed at any instant', () => {
  it.each([
    ['empty', 0],
    ['filling', 0],
    ['filling', 600],
    ['circulating', 0],
    ['circulating', 600],
    ['resting', 0],
    ['emptying', 0],
    ['emptying', 300],
  ] as const)(
    'such as one when it had been %s for %d s comes back safe, and runs again by itself',
    (phase, forS) => {
      const { first, later, before } = killedIn(phase, forS);
      expect(first.outputs.pumpFraction).toBe(0);

      expect(later.flatMap(({ alarms }) => alarms)).toEqual([]);
      for (const total of ['heatHomeJ', 'electricityJ', 'starts', 'fills'] as const)
        expect(first.meter.total[total]).toBeGreaterThanOrEqual(before[total]);
      expect(later.at(-1)?.phase).not.toBe('stopped');
      expect(later.some((decision) => decision.phase !== 'emptying')).toBe(true);
    },
  );
});

describe('a clock jump', () => {
  const minuteMs = 60_000;
  const jumps = [
    ['an hour ahead', 60 * minuteMs],
    ['a day back', -1440 * minuteMs],
    ['back to the beginning of time', -Date.UTC(2031, 5, 21, 12)],
  ] as const;

  /** The same inputs with a calendar that is off from noon on, for a while; and where the decisions part [min]. */
  function jumped(jumpMs: number, forMin: number) {
    const scene = sceneOf('clear-day');
    const settings = settingsSchema.parse({ ...defaultSettings, ...scene.site.settings });
    const { loop } = begin(scene);
    let state = initialState();
    let apartAfterMin: number | null = null;
    const alarms: unknown[] = [];
    for (let second = 0; second <= 9 * 3600; second += stepS) {
      const { input, decision } = loop.step(scene.startMs + second * 1000);
      const sinceMin = second / 60 - 6 * 60;
      const off = sinceMin >= 0 && sinceMin < forMin;
      const next = stepOn(state, { ...input, nowMs: input.nowMs + (off ? jumpMs : 0) }, scene.site, settings);
      state = next.state;
      alarms.push(...next.decision.alarms);
      const same = JSON.stringify(next.decision.outputs) === JSON.stringify(decision.outputs);
      if (!same || next.decision.phase !== decision.phase) apartAfterMin ??= sinceMin;
    }
    return { apartAfterMin, alarms };
  }

  it.each(jumps)('%s at noon, set right within the hour, changes no phase and no output', (_name, jumpMs) => {
    expect(jumped(jumpMs, 55)).toEqual({ apartAfterMin: null, alarms: [] });
  });

  // A calendar that keeps to another season is believed at last, and sensors are then held against its sun.
  it.each(jumps.slice(0, 2))(
    '%s at noon for good changes nothing for an hour, and raises no alarm after it',
    (_name, jumpMs) => {
      const { apartAfterMin, alarms } = jumped(jumpMs, Number.POSITIVE_INFINITY);
      expect(apartAfterMin ?? 60).toBeGreaterThanOrEqual(60);
      expect(alarms).toEqual([]);
    },
  );
});

describe('the table of failures', () => {
  it('has a row for each, and none that nobody asked for by another name', () => {
    const rehearsed = new Set<string>([...failureRows, ...elsewhereRows].map(({ failure }) => failure));
    const inThisFile = ['clock jump'];
    expect(failures.filter((failure) => !rehearsed.has(failure) && !inThisFile.includes(failure))).toEqual(
      [],
    );
  });

  it.each(elsewhereRows)('points to a test of "$failure" that is there: $test', ({ file, test }) => {
    expect(readFileSync(file, 'utf8')).toContain(test);
  });

  it('says of each what a person does', () => {
    for (const { person } of [...failureRows, ...elsewhereRows]) expect(person).toMatch(/^[A-Z].*\.$/);
  });
});
