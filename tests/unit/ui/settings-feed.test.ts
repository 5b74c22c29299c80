import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Door } from '../../../desktop/ui/door.ts';
import { createSettingsFeed } from '../../../desktop/ui/store/settings-feed.ts';
import {
  emptySettings,
  selectChanges,
  selectSent,
  selectWhatIf,
  useSettings,
} from '../../../desktop/ui/store/settings-store.ts';
import { requestIdSchema } from '../../../shared-types/engine.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { testWhatIf } from '../../support/fake-monitor/what-if.ts';

type Call = { method: string; params: Record<string, unknown>; reply: (value: unknown) => void };
let calls: Call[];
const feed = () =>
  createSettingsFeed({
    call: (method: string, params: Record<string, unknown>) =>
      new Promise((resolve) => {
        calls.push({ method, params, reply: (value) => resolve(value as never) });
      }),
  } as unknown as Door);
const last = (method: string) => calls.findLast((call) => call.method === method);
const state = () => useSettings.getState();
const problem = { severity: 'error', text: 'No.' } as const;

beforeEach(() => {
  vi.useFakeTimers();
  calls = [];
  useSettings.setState(emptySettings);
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a change of settings', () => {
  test('is asked, and its answer kept with what was asked', async () => {
    const done = feed().changeSettings('a', { startDifferenceK: 2 }, 4);
    expect(selectSent('a')(state())).toMatchObject({ revision: 4, outcome: { state: 'asking' } });
    expect(selectSent('b')(state())).toBeNull();
    expect(last('request')?.params).toEqual({
      site: 'a',
      operation: { kind: 'change-settings', settings: { startDifferenceK: 2 } },
    });
    last('request')?.reply({ ok: true, result: { accepted: true } });
    await done;
    expect(state().sent?.outcome).toEqual({ state: 'answered', answer: { accepted: true } });
  });

  test('without an answer says why', async () => {
    const done = feed().changeSettings('a', {}, 4);
    last('request')?.reply({ ok: false, problem });
    await done;
    expect(state().sent?.outcome).toEqual({ state: 'unanswered', problem });
  });
});

describe('a day under other settings', () => {
  const report = testWhatIf('2031-06-20');

  test('is asked under a name of its own, watched while it runs, and shown', async () => {
    const done = feed().whatIf('a', report.day, defaultSettings);
    const job = last('whatIf')?.params['job'];
    expect(requestIdSchema.safeParse(job).success).toBe(true);
    expect(selectWhatIf('a')(state())?.outcome).toEqual({
      state: 'running',
      progress: { doneFraction: 0, doing: 'waiting' },
    });
    expect(selectWhatIf('b')(state())).toBeNull();
    await vi.advanceTimersByTimeAsync(400);
    expect(last('jobProgress')?.params).toEqual({ job });
    last('jobProgress')?.reply({ ok: true, result: { doneFraction: 0.5, doing: 'deciding' } });
    await vi.advanceTimersByTimeAsync(0);
    expect(state().whatIf?.outcome).toEqual({
      state: 'running',
      progress: { doneFraction: 0.5, doing: 'deciding' },
    });
    await vi.advanceTimersByTimeAsync(400);
    const late = last('jobProgress');
    last('whatIf')?.reply({ ok: true, result: report });
    await done;
    late?.reply({ ok: true, result: { doneFraction: 0.75, doing: 'deciding' } });
    await vi.advanceTimersByTimeAsync(2000);
    expect(state().whatIf?.outcome).toEqual({ state: 'ready', result: report });
    expect(calls.filter(({ method }) => method === 'jobProgress').length).toBe(2);
  });

  test('that failed says why', async () => {
    const done = feed().whatIf('a', report.day, defaultSettings);
    last('whatIf')?.reply({ ok: false, problem });
    await done;
    expect(state().whatIf?.outcome).toEqual({ state: 'failed', problem });
  });

  test('is gone once it was given up, whatever comes of it later', async () => {
    const own = feed();
    const done = own.whatIf('a', report.day, defaultSettings);
    own.cancelWhatIf();
    expect(last('cancelJob')?.params).toEqual({ job: last('whatIf')?.params['job'] });
    last('whatIf')?.reply({ ok: true, result: report });
    await done;
    expect(state().whatIf).toBeNull();
    calls = [];
    own.cancelWhatIf();
    expect(calls).toEqual([]);
  });

  test('gives way to a newer question', async () => {
    const own = feed();
    const first = own.whatIf('a', '2031-06-19', defaultSettings);
    const firstCall = last('whatIf');
    const second = own.whatIf('a', report.day, defaultSettings);
    expect(last('cancelJob')?.params).toEqual({ job: firstCall?.params['job'] });
    firstCall?.reply({ ok: false, problem });
    await first;
    expect(state().whatIf).toMatchObject({ day: report.day, outcome: { state: 'running' } });
    last('whatIf')?.reply({ ok: true, result: report });
    await second;
    expect(state().whatIf?.outcome.state).toBe('ready');
  });
});

describe('what else is asked of settings', () => {
  test('remarks are kept with the settings they are on, and dropped when there are none', async () => {
    const own = feed();
    const list = [{ text: 'It may cycle.', isNew: true }];
    const asked = own.askRemarks('a', defaultSettings);
    last('settingsRemarks')?.reply({ ok: true, result: list });
    await asked;
    expect(state().remarks).toEqual({ settings: defaultSettings, list });
    const again = own.askRemarks('a', defaultSettings);
    last('settingsRemarks')?.reply({ ok: false, problem });
    await again;
    expect(state().remarks).toBeNull();
  });

  test('the changes so far stay in sight while they are asked for anew', async () => {
    const own = feed();
    const first = own.loadChanges('a');
    expect(selectChanges('a')(state())).toEqual({ state: 'loading' });
    expect(last('events')?.params).toEqual({ site: 'a', limit: 200, kinds: ['settings-changed'] });
    last('events')?.reply({ ok: true, result: [] });
    await first;
    const second = own.loadChanges('a');
    expect(selectChanges('a')(state())).toEqual({ state: 'ready', value: [] });
    last('events')?.reply({ ok: false, problem });
    await second;
    expect(selectChanges('a')(state())).toEqual({ state: 'failed', problem });
    expect(selectChanges('toString')(state())).toBeUndefined();
  });
});
