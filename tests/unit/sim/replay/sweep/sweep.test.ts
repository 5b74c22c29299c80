import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { defaultSettings } from '../../../../../shared-types/settings.ts';
import { sweepReportSchema } from '../../../../../shared-types/tuning.ts';
import { usualLoop } from '../../../../../sim/identify/possible-loop.ts';
import { tellProgress } from '../../../../../sim/replay/sweep/progress.ts';
import { reportText } from '../../../../../sim/replay/sweep/report-text.ts';
import { type SweepOptions, sweep } from '../../../../../sim/replay/sweep/sweep.ts';
import { type TemporaryFolder, temporaryFolder } from '../../../../support/temporary.ts';

let folder: TemporaryFolder;
beforeAll(() => {
  folder = temporaryFolder('sweep');
});
afterAll(() => folder.remove());

const options: SweepOptions = {
  logPath: '',
  days: ['2031-06-20', '2031-06-21', '2031-06-22'],
  logMark: 'as it was',
  ranges: [
    { setting: 'startDifferenceK', from: 1, to: 4, values: 4 },
    { setting: 'fillsPerDay', from: 2, to: 4, values: 3 },
  ],
  settingsInForce: defaultSettings,
  loops: [usualLoop, usualLoop],
  loopRemarks: ['A loop.'],
  seed: 1,
  workers: 1,
  workerModule: new URL('../../../../support/sweep-worker.ts', import.meta.url),
};

describe('a sweep', () => {
  it('gives the same bytes with one worker and with several', async () => {
    const one = await sweep(options);
    const two = await sweep({ ...options, workers: 2 });
    expect(JSON.stringify(two)).toBe(JSON.stringify(one));
    expect(sweepReportSchema.safeParse(one).success).toBe(true);
    expect(one?.points).toHaveLength(12);
    expect(one?.advice).toMatchObject({ point: expect.any(Number) });
    expect(one?.points[one.advice.point]?.change).toEqual({ startDifferenceK: 4 });
    expect(one?.remarks).toEqual(['A loop.', '3 days: Made up.']);
    expect(one?.points[0]?.aboveFreezingK).toBe(5);
    expect(one?.points[0]?.belowLinerLimitK).toBe(18);
    expect(one?.points[0]?.beyondLogS).toBe(5400);
  });

  it('leaves out a day that cannot be lived again, and says so', async () => {
    const report = await sweep({ ...options, days: ['2031-06-20', 'sunless'], workers: 2 });
    expect(report?.days).toEqual(['2031-06-20']);
    expect(report?.remarks).toEqual([
      'A loop.',
      '2031-06-20: Made up.',
      'Left out: there is no sun on sunless.',
    ]);
  });

  it('says why when no day can be lived again', async () => {
    await expect(sweep({ ...options, days: ['sunless'] })).rejects.toThrow('there is no sun on sunless');
    await expect(sweep({ ...options, days: [] })).rejects.toThrow('no day was given');
  });

  it('ends with the error of a worker that breaks', async () => {
    await expect(sweep({ ...options, days: ['2031-06-20', 'broken'], workers: 2 })).rejects.toThrow(
      'the worker broke',
    );
  });

  it('tells how far it is', async () => {
    const told: number[] = [];
    await sweep({ ...options, onProgress: ({ done, all }) => told.push(done / all) });
    expect(told[0]).toBe(0);
    expect(told.at(-1)).toBe(1);
    expect(told.toSorted((a, b) => a - b)).toEqual(told);
  });

  it('stops when it is asked to, and goes on from what was found', async () => {
    const resumeFile = folder.file('half/sweep.json');
    const whole = await sweep(options);
    const stop = new AbortController();
    const given = await sweep({
      ...options,
      resumeFile,
      signal: stop.signal,
      onProgress: ({ done }) => {
        if (done === 7) stop.abort();
      },
    });
    expect(given).toBeUndefined();
    expect(existsSync(`${resumeFile}.new`)).toBe(false);
    const told: number[] = [];
    const report = await sweep({
      ...options,
      resumeFile,
      workers: 2,
      onProgress: ({ done }) => told.push(done),
    });
    expect(told[0]).toBe(7);
    expect(JSON.stringify(report)).toBe(JSON.stringify(whole));
    const kept = readFileSync(resumeFile, 'utf8');
    expect(JSON.stringify(await sweep({ ...options, resumeFile }))).toBe(JSON.stringify(whole));
    expect(readFileSync(resumeFile, 'utf8')).toBe(kept);
  });

  it('gives up before it begins when it was asked to stop already', async () => {
    expect(await sweep({ ...options, signal: AbortSignal.abort() })).toBeUndefined();
  });

  it('does not go on from the file of another sweep, nor write over it', async () => {
    const resumeFile = folder.file('other.json');
    await sweep({ ...options, resumeFile });
    const kept = readFileSync(resumeFile, 'utf8');
    const others: Partial<SweepOptions>[] = [
      { seed: 2 },
      { logMark: 'as it became' },
      { days: ['2031-06-20'] },
      { loops: [usualLoop] },
      { ranges: options.ranges.slice(0, 1) },
      { settingsInForce: { ...defaultSettings, leastOnS: 181 } },
    ];
    for (const other of others)
      await expect(sweep({ ...options, ...other, resumeFile })).rejects.toThrow('is of another sweep');
    expect(readFileSync(resumeFile, 'utf8')).toBe(kept);
  });

  it.each(['', '{', '{"schemaVersion":2}', '[]'])(
    'refuses a file that is none of a sweep: %s',
    async (text) => {
      const resumeFile = folder.file('none.json');
      writeFileSync(resumeFile, text);
      await expect(sweep({ ...options, resumeFile })).rejects.toThrow('is no file of an interrupted sweep');
      expect(readFileSync(resumeFile, 'utf8')).toBe(text);
    },
  );

  it('refuses a file that cannot be read', async () => {
    await expect(sweep({ ...options, resumeFile: folder.path })).rejects.toThrow('cannot be read');
  });
});

describe('the text of a sweep', () => {
  it('has the front first, the advice, what was refused and the remarks', async () => {
    const ranges: SweepOptions['ranges'] = [{ setting: 'stopDifferenceK', from: 0.2, to: 5, values: 2 }];
    const report = await sweep({ ...options, ranges });
    const text = reportText(report ?? expect.fail('it was given up'));
    expect(text).toContain('3 days, 2031-06-20 to 2031-06-22: 2 sets of settings');
    expect(text).toMatch(
      /^\*\s+[\d.]+\s+0\.00\s+0\.00\s+0\.00\s+57\s+12\s+[\d.]+\s+5\.0\s+18\.0\s+1\.5 {3}as they are$/m,
    );
    expect(text).toContain('stopDifferenceK 0.2 K');
    expect(text).toContain('Leave the settings as they are: none of the others brings more heat.');
    expect(text).toContain('  - stopDifferenceK 5 K: The stop difference is at least');
    expect(text).toContain('  - A loop.');
  });
});

describe('progress of a sweep', () => {
  it('is each tenth on a line where nobody looks on', () => {
    const written: string[] = [];
    const tell = tellProgress({ write: (text) => written.push(text) });
    for (let done = 0; done <= 40; done++) tell({ done, all: 40 });
    expect(written).toHaveLength(11);
    expect(written[1]).toBe('4 of 40 outcomes\n');
  });

  it('is each hundredth on one line where a person looks on', () => {
    const written: string[] = [];
    const tell = tellProgress({ isTTY: true, write: (text) => written.push(text) });
    for (let done = 0; done <= 200; done++) tell({ done, all: 200 });
    expect(written).toHaveLength(101);
    expect(written[1]).toBe('\r2 of 200 outcomes');
    expect(written.at(-1)).toBe('\r200 of 200 outcomes\n');
  });
});
