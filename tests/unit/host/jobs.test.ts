import { describe, expect, it, vi } from 'vitest';
import type { LogReader } from '../../../controller/log/log.ts';
import { createHandlers } from '../../../desktop/host/handlers.ts';
import type { History } from '../../../desktop/host/history.ts';
import { answerQuestion } from '../../../desktop/host/history-questions.ts';
import { createJobBoard } from '../../../desktop/host/job-board.ts';
import {
  cancel,
  doneFraction,
  isCancelled,
  type JobFlags,
  newJobFlags,
  setDone,
} from '../../../desktop/host/job-flags.ts';
import { settingsRemarksFor } from '../../../desktop/host/settings-remarks.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { testWhatIf } from '../../support/fake-monitor/what-if.ts';
import { siteMessage, siteName, snapshot } from './samples.ts';

const day = '2031-06-20';
const params = { site: siteName, day, settings: defaultSettings, job: 'job-00000001' };

describe('the flags of a job', () => {
  it('carry its done share, within 0 and 1, and whether it is wanted', () => {
    const flags = newJobFlags();
    expect([doneFraction(flags), isCancelled(flags)]).toEqual([0, false]);
    const shares = [0.25, 7, -1].map((share) => {
      setDone(flags, share);
      return doneFraction(flags);
    });
    expect(shares).toEqual([0.25, 1, 0]);
    cancel(flags);
    expect([doneFraction(flags), isCancelled(flags)]).toEqual([0, true]);
  });
});

describe('the board of jobs', () => {
  it('knows a job as long as it runs, and no second one of its name', async () => {
    const board = createJobBoard();
    const { promise, resolve } = Promise.withResolvers<string>();
    let flags: JobFlags | undefined;
    const running = board.run('a', (own) => {
      flags = own;
      setDone(own, 0.5);
      return promise;
    });
    expect([board.progress('a'), board.progress('b'), board.cancel('b')]).toEqual([
      { doneFraction: 0.5, doing: 'waiting' },
      null,
      false,
    ]);
    expect(await board.run('a', () => promise)).toMatchObject({
      ok: false,
      problem: { text: 'A job of this name runs already.' },
    });
    expect(board.cancel('a')).toBe(true);
    expect(flags && isCancelled(flags)).toBe(true);
    resolve('done');
    expect(await running).toBe('done');
    expect([board.progress('a'), board.cancel('a')]).toEqual([null, false]);
  });
});

describe('a day under other settings, asked of the host', () => {
  const replays = (whatIf: unknown) => ({
    replayDay: vi.fn(),
    allowedHeat: vi.fn(),
    whatIf: whatIf as never,
    keptFit: vi.fn(),
  });
  const reader = { days: () => [{ day, steps: 400 }] } as unknown as LogReader;

  it('tells how far it is by the steps of the day', () => {
    const flags = newJobFlags();
    const whatIf = vi.fn((_reader, _day, _settings, { goOn }) => {
      expect(goOn(100)).toBe(true);
      expect(doneFraction(flags)).toBe(0.25);
      return testWhatIf(day);
    });
    const reply = answerQuestion(reader, 'whatIf', params, replays(whatIf), flags);
    expect(reply).toEqual({ ok: true, result: testWhatIf(day) });
    expect(whatIf.mock.calls[0]?.slice(1, 3)).toEqual([day, defaultSettings]);
  });

  it('ends in words when it is given up', () => {
    const flags = newJobFlags();
    cancel(flags);
    const whatIf = vi.fn((_reader, _day, _settings, { goOn }) => (goOn(1) ? testWhatIf(day) : undefined));
    expect(answerQuestion(reader, 'whatIf', params, replays(whatIf), flags)).toMatchObject({
      ok: false,
      problem: { severity: 'note', text: 'It was given up.' },
    });
  });

  it('runs to its end when nobody watches, even of a day without steps', () => {
    const whatIf = vi.fn((_reader, _day, _settings, { goOn }) => (goOn(1) ? testWhatIf(day) : undefined));
    const empty = { days: () => [] } as unknown as LogReader;
    expect(answerQuestion(empty, 'whatIf', params, replays(whatIf)).ok).toBe(true);
    const flags = newJobFlags();
    expect(answerQuestion(empty, 'whatIf', params, replays(whatIf), flags).ok).toBe(true);
    expect(doneFraction(flags)).toBe(1);
  });

  it('is watched and ended by its name, and refused a second time under it', async () => {
    const { promise, resolve } = Promise.withResolvers<never>();
    const ask = vi.fn((_method, _params, flags: JobFlags) => {
      setDone(flags, 0.75);
      return promise;
    });
    const handlers = createHandlers({
      history: { ask } as unknown as History,
      imports: { handlersOn: () => ({}) },
    } as never);
    const first = handlers.whatIf(params);
    const { job } = params;
    expect(await handlers.jobProgress({ job })).toEqual({
      ok: true,
      result: { doneFraction: 0.75, doing: 'waiting' },
    });
    expect(await handlers.whatIf(params)).toMatchObject({ ok: false });
    expect(await handlers.cancelJob({ job })).toEqual({ ok: true, result: true });
    expect(isCancelled(ask.mock.calls[0]?.[2] as JobFlags)).toBe(true);
    resolve({ ok: true } as never);
    await first;
    expect(await handlers.jobProgress({ job })).toEqual({ ok: true, result: null });
    expect(await handlers.cancelJob({ job })).toEqual({ ok: true, result: false });
  });
});

describe('remarks on settings before they are sent', () => {
  const live = (site: ReturnType<typeof siteMessage> | null) => ({
    site: () => ({
      name: siteName,
      status: null,
      site,
      snapshot: snapshot(),
      snapshotAgeMs: 0,
      clockAheadMs: 0,
    }),
  });

  it('are those of the site as its controller tells it', () => {
    const reply = settingsRemarksFor(live(siteMessage()), siteName, { ...defaultSettings, storeLimitC: 75 });
    expect(reply.ok && reply.result.filter(({ isNew }) => isNew).map(({ text }) => text)).toEqual([
      expect.stringContaining('75 °C'),
    ]);
  });

  it('cannot be had without a controller', () => {
    const none = { ok: false, problem: { severity: 'note' } };
    expect(settingsRemarksFor(live(null), siteName, defaultSettings)).toMatchObject(none);
    expect(settingsRemarksFor({ site: () => undefined }, siteName, defaultSettings)).toMatchObject(none);
  });
});
