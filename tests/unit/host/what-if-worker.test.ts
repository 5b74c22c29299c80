import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createHistory, type History } from '../../../desktop/host/history.ts';
import { cancel, doneFraction, newJobFlags } from '../../../desktop/host/job-flags.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { recordHistory } from '../../../sim/history.ts';
import { demoContent, siteOf } from '../../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../../support/temporary.ts';

const site = siteOf(demoContent({ control: { stepS: 10, outputExpiryS: 60 } }));
const fromMs = Date.UTC(2031, 5, 21, 6);
const params = { site: site.name, day: '2031-06-21', settings: defaultSettings, job: 'job-00000001' };

describe('the worker that decides a day again', () => {
  let folder: TemporaryFolder;
  let history: History;
  beforeAll(() => {
    folder = temporaryFolder('what-if-worker');
    const span = { fromMs, toMs: fromMs + 3 * 3_600_000 };
    recordHistory({ dataFolder: folder.path, seed: 1, kinds: ['clear'], site, ...span });
    history = createHistory({
      dataFolder: folder.path,
      worker: new URL('../../../desktop/host/history-worker.ts', import.meta.url),
      timeoutMs: 60_000,
      onRemarks: () => undefined,
    });
  });
  afterAll(async () => {
    await history.close();
    folder.remove();
  });

  it('answers, and lets its progress be seen meanwhile', async () => {
    const flags = newJobFlags();
    const reply = await history.ask('whatIf', params, flags);
    expect(reply).toMatchObject({ ok: true, result: { day: params.day, steps: 1081 } });
    // Looked at every 200 steps, the last time after 1001 of 1081.
    expect(doneFraction(flags)).toBe(0.926);
  });

  it('gives up what nobody wants any more, and answers the next question', async () => {
    const flags = newJobFlags();
    cancel(flags);
    expect(await history.ask('whatIf', params, flags)).toMatchObject({
      ok: false,
      problem: { text: 'It was given up.' },
    });
    expect((await history.ask('whatIf', params)).ok).toBe(true);
  });
});
