import { describe, expect, it } from 'vitest';
import { drainTimeS, fillTimeS, withLearnt } from '../../../controller/engine/learnt.ts';
import { defaultSettings, settingDeclarations } from '../../../shared-types/settings.ts';
import { circulatingLoop, makeSite } from './rig.ts';

const settings = defaultSettings;

describe('measured times', () => {
  it('stand in for the settings with a fifth over them', () => {
    expect(drainTimeS({ drainTimeS: 500 }, settings)).toBe(600);
    expect(fillTimeS({ fillTimeS: 500 }, settings)).toBe(600);
  });

  it('that were not measured are as set', () => {
    expect(drainTimeS({ fillTimeS: 500 }, settings)).toBe(settings.drainTimeS);
    expect(fillTimeS({ drainTimeS: 500 }, settings)).toBe(settings.fillTimeS);
  });

  it('stay within the range of the settings', () => {
    const { drainTimeS: drain, fillTimeS: fill } = settingDeclarations;
    expect(drainTimeS({ drainTimeS: 1 }, settings)).toBe(drain.least);
    expect(drainTimeS({ drainTimeS: 1e5 }, settings)).toBe(drain.most);
    expect(fillTimeS({ fillTimeS: 1 }, settings)).toBe(fill.least);
    expect(fillTimeS({ fillTimeS: 1e5 }, { ...settings, fillTimeoutS: 1e5 })).toBe(fill.most);
  });

  it('leave the fill timeout its distance', () => {
    expect(fillTimeS({ fillTimeS: 900 }, settings)).toBe(settings.fillTimeoutS / 1.2);
  });
});

describe('settings with what was learnt', () => {
  it('are the settings themselves while nothing was measured', () => {
    expect(withLearnt(settings, {})).toBe(settings);
  });

  it('change for either time, and with what was learnt anew', () => {
    expect(withLearnt(settings, { fillTimeS: 100 })).toEqual({ ...settings, fillTimeS: 120 });
    const learnt = { drainTimeS: 100 };
    const first = withLearnt(settings, learnt);
    expect(first).toEqual({ ...settings, drainTimeS: 120 });
    expect(withLearnt(settings, learnt)).toBe(first);
    expect(withLearnt(settings, { drainTimeS: 200 })).toEqual({ ...settings, drainTimeS: 240 });
  });

  it('are what the engine goes by', () => {
    const loop = circulatingLoop(makeSite('drain-valve'));
    loop.state = { ...loop.state, learnt: { drainTimeS: 150 } };
    loop.ask({ kind: 'empty' });
    loop.run(175);
    expect(loop.phase).toBe('emptying');
    expect(loop.run(10).phase).toBe('empty');
  });
});
