import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Door } from '../../../desktop/ui/door.ts';
import { otherFit } from '../../../desktop/ui/replay/fit/other-fit.ts';
import { createTuningFeed } from '../../../desktop/ui/store/tuning-feed.ts';
import {
  emptyTuning,
  selectComparison,
  selectFit,
  selectHeavy,
  selectKeptFit,
  selectOwnRun,
  selectPanCheck,
  selectSweep,
  useTuning,
} from '../../../desktop/ui/store/tuning-store.ts';
import { monitorMethods } from '../../../shared-types/monitor-api.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { testPanCheck } from '../../support/fake-monitor/pan-check.ts';
import { testComparison, testFit, testSweep } from '../../support/fake-monitor/tuning.ts';

type Call = { method: string; params: Record<string, unknown>; reply: (value: unknown) => void };
let calls: Call[];
const feed = () =>
  createTuningFeed({
    call: (method: string, params: Record<string, unknown>) =>
      new Promise((resolve) => {
        calls.push({ method, params, reply: (value) => resolve(value as never) });
      }),
  } as unknown as Door);
const last = (method: string) => calls.findLast((call) => call.method === method);
const state = () => useTuning.getState();
const problem = { severity: 'note', text: 'Busy.' } as const;
const day = '2031-06-20';
const days = ['2031-06-19', day];
const ranges = [{ setting: 'startDifferenceK', from: 1, to: 5, values: 5 }] as const;

beforeEach(() => {
  vi.useFakeTimers();
  calls = [];
  useTuning.setState(emptyTuning);
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a day lived again', () => {
  test('is asked with all that the host wants, watched while it runs, and shown', async () => {
    const done = feed().compareDay('a', day, defaultSettings, true);
    const asked = last('compareDay')?.params;
    expect(monitorMethods.compareDay.params.safeParse(asked).success).toBe(true);
    expect(asked).toMatchObject({ site: 'a', day, best: true });
    expect(selectOwnRun('a')(state())).toBe('compareDay');
    expect(selectOwnRun('b')(state())).toBeUndefined();
    await vi.advanceTimersByTimeAsync(400);
    last('jobProgress')?.reply({ ok: true, result: { doneFraction: 0.5, doing: 'living' } });
    await vi.advanceTimersByTimeAsync(0);
    expect(state().comparison?.outcome).toEqual({
      state: 'running',
      progress: { doneFraction: 0.5, doing: 'living' },
    });
    const result = testComparison(day, defaultSettings, true);
    last('compareDay')?.reply({ ok: true, result });
    await done;
    expect(selectComparison('a')(state())?.outcome).toEqual({ state: 'ready', result });
    expect(selectComparison('b')(state())).toBeNull();
    expect(selectOwnRun('a')(state())).toBeUndefined();
  });

  test('that is given up is gone, whatever comes of it later', async () => {
    const own = feed();
    const done = own.compareDay('a', day, defaultSettings, false);
    own.cancelComparison();
    expect(last('cancelJob')?.params).toEqual({ job: last('compareDay')?.params['job'] });
    last('compareDay')?.reply({ ok: true, result: {} });
    await done;
    expect(state().comparison).toBeNull();
  });
});

describe('a sweep', () => {
  test('is asked for its days and ranges, and its refusal is shown', async () => {
    const done = feed().sweep('a', days, ranges);
    const asked = last('sweep')?.params;
    expect(monitorMethods.sweep.params.safeParse(asked).success).toBe(true);
    expect(asked).toMatchObject({ days, ranges });
    expect(selectOwnRun('a')(state())).toBe('sweep');
    last('sweep')?.reply({ ok: false, problem });
    await done;
    expect(selectSweep('a')(state())?.outcome).toEqual({ state: 'failed', problem });
    expect(selectSweep('b')(state())).toBeNull();
  });

  test('keeps its result apart from a comparison, and goes alone when given up', async () => {
    const own = feed();
    const first = own.sweep('a', days, ranges);
    last('sweep')?.reply({ ok: true, result: testSweep(days) });
    await first;
    void own.compareDay('a', day, defaultSettings, false);
    own.cancelSweep();
    expect(state().sweep).toBeNull();
    expect(state().comparison?.outcome.state).toBe('running');
    expect(last('cancelJob')).toBeUndefined();
  });
});

describe('the fit that an answer rests on', () => {
  const asked = async (own: ReturnType<typeof feed>) => {
    void own.compareDay('a', day, defaultSettings, false);
    void own.sweep('a', days, ranges);
    await vi.advanceTimersByTimeAsync(0);
    return [state().comparison?.keptThen, state().sweep?.keptThen];
  };

  test('is remembered as it was kept when the question was asked', async () => {
    const own = feed();
    expect(await asked(own)).toEqual([undefined, undefined]);
    const kept = own.loadKeptFit('a');
    last('keptFit')?.reply({ ok: true, result: testFit(days) });
    await kept;
    expect(await asked(own)).toEqual([testFit(days), testFit(days)]);
  });

  test('is another one as soon as anything in it differs, and none that is not known', () => {
    const fit = testFit(days);
    expect(otherFit(fit, testFit(days))).toBe(false);
    expect(otherFit(fit, testFit([day]))).toBe(true);
    expect(otherFit(null, fit)).toBe(true);
    expect(otherFit(null, null)).toBe(false);
    expect(otherFit(undefined, fit)).toBe(false);
    expect(otherFit(fit, undefined)).toBe(false);
  });
});

describe('a fit', () => {
  test('is asked for its days, and the one that is kept is asked for after it', async () => {
    const done = feed().fit('a', days);
    expect(monitorMethods.fit.params.safeParse(last('fit')?.params).success).toBe(true);
    expect(selectOwnRun('a')(state())).toBe('fit');
    last('fit')?.reply({ ok: true, result: testFit(days) });
    await vi.advanceTimersByTimeAsync(0);
    last('keptFit')?.reply({ ok: true, result: testFit(days) });
    await done;
    expect(selectFit('a')(state())?.outcome.state).toBe('ready');
    expect(selectFit('b')(state())).toBeNull();
    expect(selectKeptFit('a')(state())).toEqual({ state: 'ready', value: testFit(days) });
  });

  test('can be given up', async () => {
    const own = feed();
    void own.fit('a', days);
    own.cancelFit();
    expect(state().fit).toBeNull();
    expect(last('cancelJob')).toBeDefined();
  });

  test('that is kept stays in sight while it is asked for anew, and a failure is told', async () => {
    const own = feed();
    const first = own.loadKeptFit('a');
    expect(selectKeptFit('a')(state())).toEqual({ state: 'loading' });
    last('keptFit')?.reply({ ok: true, result: null });
    await first;
    const again = own.loadKeptFit('a');
    expect(selectKeptFit('a')(state())).toEqual({ state: 'ready', value: null });
    last('keptFit')?.reply({ ok: false, problem });
    await again;
    expect(selectKeptFit('a')(state())).toEqual({ state: 'failed', problem });
    expect(selectKeptFit('constructor')(state())).toBeUndefined();
  });
});

describe('a check of the pan', () => {
  test('is asked for its days and those of the reference, and shown for its site alone', async () => {
    const own = feed();
    const kept = own.loadKeptFit('a');
    last('keptFit')?.reply({ ok: true, result: testFit(days) });
    await kept;
    const done = own.panCheck('a', days, [day]);
    const asked = last('panCheck')?.params;
    expect(monitorMethods.panCheck.params.safeParse(asked).success).toBe(true);
    expect(asked).toMatchObject({ site: 'a', days, referenceDays: [day] });
    expect(selectOwnRun('a')(state())).toBe('panCheck');
    expect(selectOwnRun('b')(state())).toBeUndefined();
    const result = testPanCheck(days);
    last('panCheck')?.reply({ ok: true, result });
    await done;
    expect(selectPanCheck('a')(state())).toEqual({
      ...{ site: 'a', days, referenceDays: [day], keptThen: testFit(days) },
      outcome: { state: 'ready', result },
    });
    expect(selectPanCheck('b')(state())).toBeNull();
    expect(selectOwnRun('a')(state())).toBeUndefined();
  });

  test('of another site takes the place of the one before, whatever comes of that later', async () => {
    const own = feed();
    const first = own.panCheck('a', days, []);
    const replyToFirst = last('panCheck')?.reply;
    void own.panCheck('b', days, []);
    expect(last('cancelJob')).toBeDefined();
    replyToFirst?.({ ok: true, result: testPanCheck(days) });
    await first;
    expect(selectPanCheck('a')(state())).toBeNull();
    expect(selectPanCheck('b')(state())?.outcome.state).toBe('running');
  });

  test('can be given up, and its refusal is shown', async () => {
    const own = feed();
    void own.panCheck('a', days, []);
    own.cancelPanCheck();
    expect(state().panCheck).toBeNull();
    expect(last('cancelJob')?.params).toEqual({ job: last('panCheck')?.params['job'] });
    const done = own.panCheck('a', days, []);
    last('panCheck')?.reply({ ok: false, problem });
    await done;
    expect(selectPanCheck('a')(state())?.outcome).toEqual({ state: 'failed', problem });
  });
});

describe('a long job that this page did not begin', () => {
  const heavy = { job: 'job-00000001', method: 'sweep', progress: { doneFraction: 0.2, doing: 'sweeping' } };

  test('is heard of, and a host that does not answer changes nothing', async () => {
    const own = feed();
    expect(selectHeavy('a')(state())).toBeNull();
    const first = own.loadHeavy('a');
    last('heavyJob')?.reply({ ok: true, result: heavy });
    await first;
    expect(selectHeavy('a')(state())).toEqual(heavy);
    const again = own.loadHeavy('a');
    last('heavyJob')?.reply({ ok: false, problem });
    await again;
    expect(selectHeavy('a')(state())).toEqual(heavy);
  });

  test('and that was a fit may have left another one: it is asked for once that job is over', async () => {
    const own = feed();
    const fit = { ...heavy, method: 'fit' };
    for (const result of [fit, fit]) {
      const done = own.loadHeavy('a');
      last('heavyJob')?.reply({ ok: true, result });
      await done;
    }
    expect(last('keptFit')).toBeUndefined();
    void own.loadHeavy('a');
    last('heavyJob')?.reply({ ok: true, result: { ...heavy, job: 'job-00000002' } });
    await vi.advanceTimersByTimeAsync(0);
    expect(last('keptFit')?.params).toEqual({ site: 'a' });
    calls = [];
    void own.loadHeavy('a');
    last('heavyJob')?.reply({ ok: true, result: null });
    await vi.advanceTimersByTimeAsync(0);
    expect(last('keptFit')).toBeUndefined();
  });

  test('is ended by its name, and looked for again', async () => {
    const done = feed().endHeavy('a', heavy.job);
    expect(last('cancelJob')?.params).toEqual({ job: heavy.job });
    last('cancelJob')?.reply({ ok: true, result: true });
    await vi.advanceTimersByTimeAsync(0);
    last('heavyJob')?.reply({ ok: true, result: null });
    await done;
    expect(selectHeavy('a')(state())).toBeNull();
  });
});
