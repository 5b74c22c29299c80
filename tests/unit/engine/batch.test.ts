import { describe, expect, it } from 'vitest';
import { settingsRemarks } from '../../../controller/engine/remarks.ts';
import { initialState } from '../../../controller/engine/state.ts';
import { wayHome } from '../../../controller/engine/want/batch.ts';
import { refillCostJ } from '../../../controller/engine/want/refill.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import { circulatingLoop, type Loop, makeSite, quickSettings, type SiteKind } from './rig.ts';
import { situationOf } from './situations.ts';

const batches = { batchRunning: 1, batchTemperatureC: 40 };

/** A pan that was just filled, with water 7 K above the store bottom: enough to circulate, not for a batch. */
const filled = (kind: SiteKind = 'drain-valve', changes: object = {}): Loop =>
  circulatingLoop(makeSite(kind), { ...batches, ...changes });

const at = (loop: Loop, panC: number) => loop.set({ panOutletC: panC, panSheetC: panC });

describe('a pan that is run in batches', () => {
  it('rests once it is full, although the pump would bring heat', () => {
    const loop = filled().run(60);
    expect([loop.phase, loop.why]).toEqual(['resting', 'warming-batch']);
    expect(loop.last.reasons.phase.text).toContain('27.0 °C; its water goes home at 40.0 °C');
    expect(circulatingLoop(makeSite('drain-valve')).run(60).phase).toBe('circulating');
  });

  it('warms until the batch temperature, then runs out into the store and is filled again', () => {
    const loop = at(filled().run(60), 39.9).run(300);
    expect(loop.why).toBe('warming-batch');
    at(loop, 40).run(10);
    expect(loop.why).toBe('waiting-start-delay');
    loop.until('emptying');
    expect(loop.why).toBe('sending-batch-home');
    loop.until('empty');
    expect(at(loop, 45).until('filling').why).toBe('filling-for-heat');
  });

  it('waits for the store as well: water no warmer than that is not sent home', () => {
    const loop = at(filled().run(60), 41).set({ storeBottomC: 38 }).run(120);
    expect(loop.phase).toBe('resting');
    expect(loop.set({ storeBottomC: 35 }).until('emptying').why).toBe('sending-batch-home');
  });

  it('exchanges its water by the pump when the fills of the day are used up', () => {
    const loop = at(filled('drain-valve', { fillsPerDay: 1 }).run(60), 40);
    expect(loop.until('circulating').why).toBe('circulating-for-heat');
    // Cold water has come; the next batch warms when the pump has brought what it can.
    expect(at(loop, 30).run(60).phase).toBe('circulating');
    expect(at(loop, 21).until('resting').why).toBe('resting-no-gain');
  });

  it('exchanges its water by the pump where it cannot be emptied', () => {
    expect(at(filled('corner').run(60), 40).until('circulating').why).toBe('circulating-for-heat');
  });

  it('is emptied like any other when it gains nothing for long', () => {
    const loop = filled('drain-valve', { emptyAfterMin: 10 }).run(60);
    expect(loop.until('emptying').why).toBe('emptying-no-gain');
  });

  it('circulates where the pan empties as soon as the pump stops, and that is remarked', () => {
    expect(filled('pump-stop').run(60).phase).toBe('circulating');
    const codes = (kind: SiteKind, batchRunning: number) =>
      settingsRemarks(makeSite(kind), { ...defaultSettings, batchRunning }, {}).map(({ code }) => code);
    expect(codes('pump-stop', 1)).toContain('no-batches-here');
    expect(codes('pump-stop', 0)).not.toContain('no-batches-here');
    expect(codes('drain-valve', 1)).not.toContain('no-batches-here');
  });
});

describe('the way home of a warm pan', () => {
  const settings = { ...quickSettings, ...batches };
  const promised = (dayJ: number | null) => {
    const state = initialState();
    return situationOf({ settings, state: { harvest: { ...state.harvest, dayJ } } });
  };

  it('is by emptying as long as the day pays another fill, or does not say', () => {
    const costJ = refillCostJ(promised(null));
    expect(wayHome(promised(null))).toEqual(['empty', 'sending-batch-home']);
    expect(wayHome(promised(costJ))).toEqual(['empty', 'sending-batch-home']);
    expect(wayHome(promised(costJ - 1))).toEqual(['run', 'circulating-for-heat']);
  });

  it('is by the pump into an exchanger, and where no batches are run', () => {
    const site = { ...makeSite('drain-valve'), plumbing: 'reservoir' as const };
    expect(wayHome({ ...promised(null), site })).toEqual(['run', 'circulating-for-heat']);
    expect(wayHome({ ...promised(null), settings: quickSettings })).toEqual(['run', 'circulating-for-heat']);
  });
});
