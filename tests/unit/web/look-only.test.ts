import { beforeEach, describe, expect, it } from 'vitest';
import { createJobBoard, type JobBoard } from '../../../desktop/host/job-board.ts';
import { lookOnlyApi } from '../../../desktop/web/look-only.ts';
import type { MonitorApi } from '../../../shared-types/monitor-api.ts';

const job = 'job-00000001';
let board: JobBoard;
/** A monitor whose jobs end only when they are given up. */
let whole: MonitorApi;
let looker: MonitorApi;

beforeEach(() => {
  board = createJobBoard();
  whole = {
    async call(method, params) {
      const named = params as { job: string };
      if (method === 'jobProgress') return { ok: true, result: board.progress(named.job) } as never;
      if (method === 'cancelJob') return { ok: true, result: board.cancel(named.job) } as never;
      return board.run(named.job, (_flags, { up }) => untilGivenUp(up)) as never;
    },
    listen: () => () => undefined,
  };
  looker = lookOnlyApi(whole);
});

const untilGivenUp = (up: AbortSignal) =>
  new Promise((resolve) => up.addEventListener('abort', () => resolve({ ok: true, result: 'given up' })));
const begin = (api: MonitorApi, method: 'compareDay' | 'whatIf' | 'fit' = 'compareDay') =>
  api.call(method, { job } as never);
const end = (api: MonitorApi) => api.call('cancelJob', { job });
const refused = { ok: false, problem: { text: expect.stringContaining('not one that you began') } };

describe('whoever may only look', () => {
  it.each(['compareDay', 'whatIf'] as const)('ends a %s of their own, even at once', async (method) => {
    const running = begin(looker, method);
    expect(await end(looker)).toEqual({ ok: true, result: true });
    expect(await running).toEqual({ ok: true, result: 'given up' });
  });

  it('ends no job of somebody else', async () => {
    const running = begin(whole, 'fit');
    expect(await end(looker)).toMatchObject(refused);
    expect(await end(lookOnlyApi(whole))).toMatchObject(refused);
    expect(board.progress(job)).not.toBeNull();
    await end(whole);
    await running;
  });

  it('ends no job of somebody else by beginning one of the same name', async () => {
    const running = begin(whole, 'fit');
    const second = begin(looker);
    expect(await end(looker)).toMatchObject(refused);
    expect(await second).toMatchObject({ ok: false, problem: { text: expect.stringContaining('already') } });
    expect(await end(looker)).toMatchObject(refused);
    expect(board.progress(job)).not.toBeNull();
    await end(whole);
    await running;
  });

  it('ends no later job of somebody else that bears the name of an own one', async () => {
    const first = begin(looker);
    await end(looker);
    await first;
    const running = begin(whole, 'fit');
    expect(await end(looker)).toMatchObject(refused);
    await end(whole);
    await running;
  });

  it.each([undefined, null, {}, { job: 7 }])(
    'gets an answer to %j in place of parameters',
    async (params) => {
      expect(await looker.call('cancelJob', params as never)).toMatchObject(refused);
    },
  );
});
