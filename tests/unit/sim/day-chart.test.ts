import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { drawDay } from '../../../sim/day-chart/draw.ts';
import { liveDay } from '../../../sim/day-chart/live-day.ts';

const scenario = new URL('../../../sim/scenarios/days/broken-cloud.yaml', import.meta.url).pathname;
const shown = new URL('../../../controller/engine/control-day.svg', import.meta.url);

describe('the chart of a day', () => {
  it('is the one that the explanation of the control shows; else: npm run chart', () => {
    const day = liveDay(scenario, 2);
    if (!day.ok) throw new Error(day.faults.join());
    expect(day.value.minutes).toHaveLength(24 * 60 + 1);
    expect(drawDay(day.value) === readFileSync(shown, 'utf8')).toBe(true);
  });

  it('is not drawn of a scenario that cannot be read', () => {
    expect(liveDay('/nowhere.yaml', 0).ok).toBe(false);
  });
});
