import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { initialState } from '../../../../controller/engine/index.ts';
import type { AlarmCode } from '../../../../shared-types/alarms.ts';
import { defaultSettings, settingsSchema } from '../../../../shared-types/settings.ts';
import { createFaultBoard, raiseWishes } from '../../../../sim/device/fault-board.ts';
import { createLoop } from '../../../../sim/loop.ts';
import { openBooks, unexplainedJ, unexplainedKg } from '../../../../sim/plant/account.ts';
import { createPlant } from '../../../../sim/plant/state.ts';
import { readScenario } from '../../../../sim/scenario/read.ts';

const stepS = 10;

/** Plays a scenario for a day with the controller's engine. @returns every alarm that was active, and the books. */
function played(name: string) {
  const read = readScenario(resolve('sim/scenarios/days', `${name}.yaml`));
  if (!read.ok) throw new Error(read.faults.join('\n'));
  const { site, seed, weather, startMs: fromMs = 0, wishes, plantOptions } = read.value;
  const plant = createPlant(site, plantOptions(fromMs));
  const board = createFaultBoard(site);
  raiseWishes(board, wishes, fromMs, site.timeZone);
  const books = openBooks(plant);
  const settings = settingsSchema.parse({ ...defaultSettings, ...site.settings });
  const loop = createLoop({
    ...{ site, settings, plant, weather, seed, account: books.account },
    state: initialState(),
    faultsAt: board.activeAt,
  });
  const alarms = new Set<AlarmCode>();
  for (let s = 0; s <= 86_400; s += stepS)
    for (const { code, active } of loop.step(fromMs + s * 1000).decision.alarms) if (active) alarms.add(code);
  return { alarms, unexplainedJ: unexplainedJ(books, plant), unexplainedKg: unexplainedKg(books, plant) };
}

/** What the person must be told of within the day; an empty list: of nothing at all. */
const rows: readonly (readonly [string, readonly AlarmCode[]])[] = [
  ['clear-day', []],
  ['broken-cloud', []],
  ['front-at-noon', []],
  ['rain', []],
  ['frost-clear-sky', []],
  ['frost-wind', []],
  ['frost-after-hot-day', []],
  ['snow-on-sheet', []],
  ['frost-corner-outlet', ['frost-danger']],
  ['frost-power-cut', ['all-sensors-silent']],
  ['boiling-hot-store', ['store-hot']],
  ['liner-heat-dead-pump', ['liner-hot', 'liner-not-cooled']],
  ['sensor-open', ['sensor-failed']],
  ['sensor-short', ['store-sensor-failed']],
  ['all-sensors-silent', ['all-sensors-silent']],
  ['one-topic-silent', ['pan-sensors-failed']],
  ['pump-dead', ['dry-running']],
  ['no-prime', ['dry-running']],
  ['store-valve-closed', ['dry-running']],
  ['welded-relay', ['output-not-followed']],
  ['drain-stuck-open', ['drain-stands-open']],
  ['drain-stuck-shut', ['not-emptying']],
  ['liner-burst', ['water-lost']],
  ['reservoir-short', ['reservoir-low']],
];

describe('a scenario played for a day with the engine', () => {
  it.each(rows)('%s tells of %j, and its books close', (name, expected) => {
    const day = played(name);
    if (expected.length === 0) expect([...day.alarms]).toEqual([]);
    else expect([...day.alarms]).toEqual(expect.arrayContaining([...expected]));
    // Rounding alone: a tenth of a joule of some hundred megajoules, a microgram of a ton.
    expect(Math.abs(day.unexplainedJ)).toBeLessThan(0.1);
    expect(Math.abs(day.unexplainedKg)).toBeLessThan(1e-9);
  });
});
