import { describe, expect, it } from 'vitest';
import { firstInstantMs } from '../../../desktop/start/calendar.ts';
import type { StartOptions } from '../../../desktop/start/options.ts';
import { readPlay } from '../../../desktop/start/play.ts';
import { serialContent, writeSite } from '../../support/sites.ts';
import { temporaryFolder } from '../../support/temporary.ts';

const options = (more: Partial<StartOptions> = {}): StartOptions => ({
  ...{ window: false, port: 0, speed: 60, data: 'data', scenario: undefined, from: undefined },
  ...more,
});

describe('what npm start simulates', () => {
  it('is the demo, after some recorded days', () => {
    expect(readPlay(options())).toMatchObject({
      ok: true,
      play: { dataFolder: 'data', recordsDays: true, firstMs: firstInstantMs },
    });
  });

  it('is a scenario from its own day on, with a log of its own', () => {
    expect(readPlay(options({ scenario: 'sim/scenarios/days/frost-power-cut.yaml' }))).toMatchObject({
      ok: true,
      play: {
        dataFolder: 'data/scenarios/frost-power-cut',
        recordsDays: false,
        // Eight in the morning, an hour behind Greenwich.
        firstMs: Date.UTC(2031, 2, 20, 9),
        deviceArguments: ['--scenario', 'sim/scenarios/days/frost-power-cut.yaml'],
      },
    });
  });

  it('is nothing, with words, where there is no such scenario or no broker', () => {
    expect(readPlay(options({ scenario: 'nowhere.yaml' }))).toMatchObject({
      ok: false,
      reason: expect.stringContaining('nowhere.yaml'),
    });
    const folder = temporaryFolder('play');
    writeSite(folder.file('line.yaml'), serialContent('/dev/null'));
    const scenario = writeSite(folder.file('day.yaml'), { schema: 1, title: 'A line', site: 'line.yaml' });
    expect(readPlay(options({ scenario }))).toMatchObject({
      ok: false,
      reason: expect.stringContaining('runs no broker'),
    });
    folder.remove();
  });
});
