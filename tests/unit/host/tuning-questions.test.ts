import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { logPath } from '../../../controller/log/log.ts';
import { cancel, newJobFlags } from '../../../desktop/host/job-flags.ts';
import { keptFit } from '../../../desktop/host/kept-fit.ts';
import { answerTuning } from '../../../desktop/host/tuning-questions.ts';
import type { HeavyMethod } from '../../../shared-types/jobs.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { recordHistory } from '../../../sim/history.ts';
import { fitPath, keepFit } from '../../../sim/identify/loop-file.ts';
import { testFit } from '../../support/fake-monitor/tuning.ts';
import { demoContent, siteOf } from '../../support/sites.ts';
import { type TemporaryFolder, temporaryFolder } from '../../support/temporary.ts';

const site = siteOf(demoContent({ control: { stepS: 10, outputExpiryS: 60 } }));
const fromMs = Date.UTC(2031, 5, 21, 6);
const day = '2031-06-21';
const hardlyLogged = '2031-06-22';
const job = 'job-00000001';
const asked = { site: site.name, day, settings: defaultSettings, best: false, job };
const ranges = [{ setting: 'startDifferenceK', from: 1, to: 3, values: 2 } as const];

let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('tuning-questions');
  recordHistory({
    dataFolder: folder.path,
    seed: 1,
    kinds: ['clear'],
    site,
    fromMs,
    toMs: fromMs + 20 * 3_600_000,
  });
});
afterAll(() => folder.remove());

const ask = (method: HeavyMethod, params: object, flags = newJobFlags()) =>
  answerTuning({ dataFolder: folder.path, method, params: params as never, flags });

describe('a long question to the log of a site', () => {
  it('without a log says so', async () => {
    expect(await ask('compareDay', { ...asked, site: 'nobody' })).toMatchObject({
      ok: false,
      problem: { severity: 'note', text: 'There is no log of nobody on this machine.' },
    });
  });

  it('of a day that is not kept, or of too little of one, is refused with the reason', async () => {
    for (const one of ['2031-06-19', hardlyLogged]) {
      const reply = await ask('compareDay', { ...asked, day: one });
      expect(reply).toMatchObject({ ok: false, problem: { severity: 'note' } });
      expect(!reply.ok && reply.problem.text).toContain(`${site.name}: `);
    }
  });

  it('of a sweep without a usable day is refused with the reason of each', async () => {
    const reply = await ask('sweep', { site: site.name, days: [hardlyLogged], ranges, job });
    expect(reply).toMatchObject({ ok: false, problem: { severity: 'note' } });
  });

  it('of a fit without a usable day is refused with the reason of each', async () => {
    const reply = await ask('fit', { site: site.name, days: [hardlyLogged], job });
    expect(reply).toMatchObject({ ok: false, problem: { severity: 'note' } });
    expect(!reply.ok && reply.problem.text).toContain(hardlyLogged);
  });

  it('of a pan check without days enough is refused with what is needed', async () => {
    const reply = await ask('panCheck', { site: site.name, days: [day], referenceDays: [], job });
    expect(reply).toMatchObject({ ok: false, problem: { severity: 'note' } });
    expect(!reply.ok && reply.problem.text).toContain('days with steady flow through a full pan are needed');
  });

  it('leaves the file of another sweep behind for its own', async () => {
    const file = `${folder.path}/${site.name}/${site.name}.sweep.json`;
    writeFileSync(file, JSON.stringify({ schemaVersion: 1, plan: 'another', days: [] }));
    const reply = await ask('sweep', { site: site.name, days: [hardlyLogged], ranges, job });
    expect(!reply.ok && reply.problem.text).not.toContain('another sweep');
  });

  it('of a sweep that came to its end keeps no file to go on from', async () => {
    const file = `${folder.path}/${site.name}/${site.name}.sweep.json`;
    rmSync(file, { force: true });
    const sweepWorker = new URL('../../support/sweep-worker.ts', import.meta.url).href;
    const params = { site: site.name, days: [day], ranges, job } as never;
    const question = {
      dataFolder: folder.path,
      method: 'sweep',
      params,
      flags: newJobFlags(),
      sweepWorker,
    } as const;
    expect(await answerTuning(question)).toMatchObject({ ok: true, result: { days: [day] } });
    expect(existsSync(file)).toBe(false);
  });

  it('that nobody wants any more ends with that', async () => {
    for (const method of ['compareDay', 'sweep', 'fit', 'panCheck'] as const) {
      const flags = newJobFlags();
      cancel(flags);
      const reply = await ask(method, { ...asked, days: [day], referenceDays: [], ranges }, flags);
      expect(reply).toEqual({ ok: false, problem: { severity: 'note', text: 'It was given up.' } });
    }
  });
});

describe('the fit that is kept', () => {
  const path = () => logPath(folder.path, site.name);

  it('is none, the one that was kept, or refused with the reason', () => {
    expect(existsSync(fitPath(path(), site.name))).toBe(false);
    expect(keptFit(path(), site.name)).toBeNull();
    const fit = { ...testFit([day]), site: site.name };
    keepFit(path(), fit);
    expect(keptFit(path(), site.name)).toEqual(fit);
    writeFileSync(fitPath(path(), site.name), '{');
    expect(() => keptFit(path(), site.name)).toThrow(RangeError);
  });
});
