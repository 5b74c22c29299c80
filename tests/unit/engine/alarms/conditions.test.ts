import { describe, expect, it } from 'vitest';
import { type AlarmGround, conditions } from '../../../../controller/engine/alarms/conditions.ts';
import { initialState, safeOutputs } from '../../../../controller/engine/state.ts';
import type { AlarmCode } from '../../../../shared-types/alarms.ts';
import { type Given, nowMs, situationOf } from '../situations.ts';
import { reservoirSite } from '../watch-rig.ts';

const { flow, heat, upkeep } = initialState();
const failed = { quality: 'failed', cause: 'stale' } as const;
const obeyed = { pumpFraction: 0, drainOpen: true, ageMs: 100 };

function ask(code: AlarmCode, given: Given, feedback: AlarmGround['feedback'] = null) {
  const situation = situationOf(given);
  return conditions[code](situation, { situation, feedback, outputsBefore: safeOutputs }, false);
}

describe('an alarm', () => {
  it('names each sensor that failed', () => {
    const told = { panOutletC: 30, storeBottomC: 20, ambientC: failed, storeTopC: failed };
    expect(ask('sensor-failed', { told })).toEqual({ values: { sensors: 2 }, detail: 'Air, Store top' });
  });

  it('tells what a reservoir lacks for a fill, and what it lacks under the pump', () => {
    const lacking = {
      ...{ site: reservoirSite, told: { panOutletC: 30, storeBottomC: 20, reservoirLevelMm: 428 } },
      state: { upkeep: { ...upkeep, reservoirMm: 429, neededMm: 430 } },
    };
    expect(ask('reservoir-low', lacking)).toEqual({ values: { levelMm: 428, neededMm: 430 } });
    const drawn = {
      phase: { name: 'filling', sinceMs: 0 } as const,
      flow: { ...flow, shortMs: nowMs - 10_000 },
    };
    expect(ask('reservoir-low', { ...lacking, state: drawn })).toEqual({ values: { levelMm: 428 } });
  });

  it('tells of a hot liner unless heat is dumped, and where the heat dump did not help', () => {
    const hot = { ...heat, linerHot: true };
    const dump = { wanted: true, failed: false, sinceMs: 0, fromC: 60 };
    const liner = (state: NonNullable<Given['state']>) =>
      ask('liner-hot', { told: { panOutletC: 80 }, state });
    const { site, settings } = situationOf();
    const values = { panC: 80, linerHotC: site.pan.linerLimitC - settings.linerMarginK };
    expect(liner({ heat })).toBeNull();
    expect(liner({ heat: hot })).toEqual({ values });
    expect(liner({ heat: { ...hot, dump } })).toEqual({ values });
    const detail = 'the heat dump does not cool it';
    expect(liner({ heat: { ...hot, dump: { ...dump, failed: true } } })).toEqual({ values, detail });
    expect(liner({ heat: hot, outputs: { ...safeOutputs, heatDumpOn: true } })).toBeNull();
    expect(liner({ heat: hot, outputs: { ...safeOutputs, heatDumpOn: false } })).toEqual({ values });
  });

  it('tells what the pump was told, and what it does', () => {
    expect(ask('output-not-followed', {}, { ...obeyed, pumpFraction: 0.5 })).toEqual({
      ...{ values: { commandedFraction: 0, pumpFraction: 0.5 }, detail: 'pump' },
    });
    expect(ask('output-not-followed', {}, { ...obeyed, pumpFraction: 0.5, drainOpen: false })?.detail).toBe(
      'pump and drain valve',
    );
    expect(ask('output-not-followed', {}, obeyed)).toBeNull();
  });
});
