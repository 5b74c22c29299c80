import { describe, expect, it, vi } from 'vitest';
import { createHandlers } from '../../../desktop/host/handlers.ts';
import {
  isCancelled,
  type JobFlags,
  newJobFlags,
  setStage,
  stageOf,
} from '../../../desktop/host/job-flags.ts';
import { createTuning } from '../../../desktop/host/tuning.ts';
import { lookOnlyApi } from '../../../desktop/web/look-only.ts';
import { jobStages } from '../../../shared-types/jobs.ts';
import { monitorMethods } from '../../../shared-types/monitor-api.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { siteName } from './samples.ts';

const day = '2031-06-20';
const compare = { site: siteName, day, settings: defaultSettings, best: false, job: 'job-00000001' };
const fit = { site: siteName, days: [day], job: 'job-00000002' };

/** Handlers whose long questions end when the test says so. */
function handlersWith() {
  const asked: { flags: JobFlags; givenUp: AbortSignal; end: (reply: unknown) => void }[] = [];
  const ask = vi.fn((_method, _params, flags: JobFlags, givenUp: AbortSignal) => {
    const { promise, resolve } = Promise.withResolvers();
    asked.push({ flags, givenUp, end: resolve });
    return promise;
  });
  const asking = Promise.withResolvers<unknown>();
  const history = { ask: () => asking.promise };
  const imports = { handlersOn: () => ({}) };
  return { handlers: createHandlers({ tuning: { ask }, history, imports } as never), asked, asking };
}

describe('the stage of a job', () => {
  it('travels in the flags, and is one of waiting at first', () => {
    const flags = newJobFlags();
    expect(stageOf(flags)).toBe('waiting');
    for (const stage of jobStages) {
      setStage(flags, stage);
      expect(stageOf(flags)).toBe(stage);
    }
  });
});

describe('long jobs', () => {
  it('run one at a time for a site, and the refusal says what is in the way', async () => {
    const { handlers, asked } = handlersWith();
    const first = handlers.compareDay(compare);
    expect(await handlers.fit(fit)).toMatchObject({
      ok: false,
      problem: {
        severity: 'note',
        text: `Nothing was begun: the monitor is busy with a day under other settings for ${siteName}.`,
      },
    });
    const elsewhere = handlers.fit({ ...fit, site: 'another-site' });
    expect(asked).toHaveLength(2);
    asked[0]?.end({ ok: true, result: 'done' });
    expect(await first).toEqual({ ok: true, result: 'done' });
    const next = handlers.fit({ ...fit, job: 'job-00000003' });
    expect(asked).toHaveLength(3);
    for (const one of asked) one.end({ ok: true });
    await Promise.all([elsewhere, next]);
  });

  it('are known to whoever asks, and ended by whoever knows their name', async () => {
    const { handlers, asked } = handlersWith();
    expect(await handlers.heavyJob({ site: siteName })).toEqual({ ok: true, result: null });
    const running = handlers.sweep({ ...fit, ranges: [] });
    setStage(asked[0]?.flags as JobFlags, 'sweeping');
    expect(await handlers.heavyJob({ site: siteName })).toEqual({
      ok: true,
      result: { job: fit.job, method: 'sweep', progress: { doneFraction: 0, doing: 'sweeping' } },
    });
    expect(await handlers.cancelJob({ job: fit.job })).toEqual({ ok: true, result: true });
    expect(asked[0]?.givenUp.aborted).toBe(true);
    expect(isCancelled(asked[0]?.flags as JobFlags)).toBe(true);
    asked[0]?.end({ ok: true });
    await running;
    expect(await handlers.heavyJob({ site: siteName })).toEqual({ ok: true, result: null });
  });

  it('are a check of the pan as well', async () => {
    const { handlers, asked } = handlersWith();
    const running = handlers.panCheck({ ...fit, referenceDays: [] });
    expect(await handlers.heavyJob({ site: siteName })).toMatchObject({ result: { method: 'panCheck' } });
    expect(await handlers.compareDay(compare)).toMatchObject({
      problem: { text: `Nothing was begun: the monitor is busy with a check of the pan for ${siteName}.` },
    });
    asked[0]?.end({ ok: true, result: 'done' });
    expect(await running).toEqual({ ok: true, result: 'done' });
  });

  it("that were given up are in nobody's way, and end before the next begins", async () => {
    const { handlers, asked } = handlersWith();
    const first = handlers.compareDay(compare);
    await handlers.cancelJob({ job: compare.job });
    expect(await handlers.heavyJob({ site: siteName })).toEqual({ ok: true, result: null });
    const dropped = handlers.fit({ ...fit, job: 'job-00000003' });
    await handlers.cancelJob({ job: 'job-00000003' });
    const next = handlers.fit(fit);
    expect(await handlers.compareDay({ ...compare, job: 'job-00000004' })).toMatchObject({ ok: false });
    expect(asked).toHaveLength(1);
    asked[0]?.end(Promise.reject(new Error('gone')));
    await expect(first).rejects.toThrow('gone');
    expect(await handlers.heavyJob({ site: siteName })).toMatchObject({ result: { job: fit.job } });
    expect(await dropped).toMatchObject({ problem: { text: 'It was given up.' } });
    await vi.waitFor(() => expect(asked).toHaveLength(2));
    asked[1]?.end({ ok: true, result: 'done' });
    expect(await next).toEqual({ ok: true, result: 'done' });
    expect(await handlers.heavyJob({ site: siteName })).toEqual({ ok: true, result: null });
  });

  it('leave their place when they fail', async () => {
    const { handlers, asked } = handlersWith();
    const first = handlers.compareDay(compare);
    asked[0]?.end(Promise.reject(new Error('gone')));
    await expect(first).rejects.toThrow('gone');
    expect(await handlers.heavyJob({ site: siteName })).toEqual({ ok: true, result: null });
  });

  it('are not mistaken for a shorter one that takes their name later', async () => {
    const { handlers, asked, asking } = handlersWith();
    const first = handlers.compareDay(compare);
    asked[0]?.end({ ok: true });
    await first;
    const shorter = handlers.whatIf(compare);
    expect(await handlers.heavyJob({ site: siteName })).toEqual({ ok: true, result: null });
    asking.resolve({ ok: true });
    await shorter;
  });

  it('under a name that another site has taken are refused', async () => {
    const { handlers, asked } = handlersWith();
    const first = handlers.fit(fit);
    expect(await handlers.fit({ ...fit, site: 'another-site' })).toMatchObject({
      problem: { text: 'A job of this name runs already.' },
    });
    asked[0]?.end({ ok: true });
    await first;
  });
});

describe('the thread of a long job', () => {
  const tuning = (source: string, patienceMs = 20) =>
    createTuning({
      dataFolder: '/nowhere',
      worker: new URL(`data:text/javascript,${encodeURIComponent(source)}`),
      patienceMs,
    });
  const begin = `import { parentPort, workerData } from 'node:worker_threads';\n`;
  const ask = (source: string, givenUp = new AbortController()) =>
    tuning(source).ask('fit', fit, newJobFlags(), givenUp.signal);

  it('is given the question and answers with its one message', async () => {
    const reply = await ask(
      `${begin}parentPort.postMessage({ ok: true, result: { ...workerData, flags: workerData.flags.length } });`,
    );
    expect(reply).toEqual({
      ok: true,
      result: { dataFolder: '/nowhere', method: 'fit', params: fit, flags: 3 },
    });
  });

  it.each([
    [`throw new Error('broken');`, 'The computation stopped: broken.'],
    ['process.exit(0);', 'The computation stopped: it ended without an answer.'],
  ])('that does %s is told in words', async (source, text) => {
    expect(await ask(source)).toEqual({ ok: false, problem: { severity: 'error', text } });
  });

  it('that does not end when it is given up is ended after a moment', async () => {
    const givenUp = new AbortController();
    const reply = ask('setInterval(() => undefined, 1000);', givenUp);
    givenUp.abort();
    expect(await reply).toEqual({ ok: false, problem: { severity: 'note', text: 'It was given up.' } });
  });

  it('ends with the monitor', async () => {
    const open = tuning('setInterval(() => undefined, 1000);');
    const reply = open.ask('fit', fit, newJobFlags(), new AbortController().signal);
    await open.close();
    expect(await reply).toMatchObject({ ok: false });
  });
});

describe('questions that live days again', () => {
  it.each([
    ['a day that is none', 'compareDay', { ...compare, day: '2031-02-30x' }],
    [
      'settings that break a rule',
      'compareDay',
      { ...compare, settings: { ...defaultSettings, stopDifferenceK: 9 } },
    ],
    [
      'settings beyond their range',
      'compareDay',
      { ...compare, settings: { ...defaultSettings, storeLimitC: 1e9 } },
    ],
    [
      'settings with a stranger among them',
      'compareDay',
      { ...compare, settings: { ...defaultSettings, x: 1 } },
    ],
    ['no day at all', 'fit', { ...fit, days: [] }],
    ['far too many days', 'fit', { ...fit, days: Array(733).fill(day) }],
    [
      'a range of no setting',
      'sweep',
      { ...fit, ranges: [{ setting: '__proto__', from: 1, to: 2, values: 2 }] },
    ],
    [
      'a range without end',
      'sweep',
      { ...fit, ranges: [{ setting: 'storeLimitC', from: 1, to: Infinity, values: 2 }] },
    ],
    [
      'too many ranges',
      'sweep',
      { ...fit, ranges: Array(4).fill({ setting: 'storeLimitC', from: 1, to: 2, values: 2 }) },
    ],
    ['days to compare with beyond two years', 'panCheck', { ...fit, referenceDays: Array(733).fill(day) }],
    ['no word on days to compare with', 'panCheck', fit],
  ] as const)('with %s are not understood', (_what, method, params) => {
    expect(monitorMethods[method].params.safeParse(params).success).toBe(false);
  });

  it('are open to lookers, but for those that keep something for everybody', async () => {
    const call = vi.fn(async () => ({ ok: true }));
    const api = lookOnlyApi({ call, listen: vi.fn() } as never);
    for (const method of ['compareDay', 'panCheck', 'keptFit', 'heavyJob'] as const)
      expect(await api.call(method, {} as never)).toEqual({ ok: true });
    call.mockClear();
    for (const method of ['fit', 'sweep'] as const)
      expect(await api.call(method, {} as never)).toMatchObject({ ok: false });
    expect(call).not.toHaveBeenCalled();
  });
});
