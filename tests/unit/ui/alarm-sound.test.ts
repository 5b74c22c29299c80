import { describe, expect, test, vi } from 'vitest';
import {
  createAlarmSound,
  lateMs,
  pauseMs,
  type SoundContext,
} from '../../../desktop/ui/shell/alarm-sound.ts';
import { bringsAlarm } from '../../../desktop/ui/shell/brings-alarm.ts';
import { defaultChoices } from '../../../desktop/ui/store/choices-store.ts';
import { emptyLive, type LiveState } from '../../../desktop/ui/store/live-store.ts';
import type { Alarm } from '../../../shared-types/alarms.ts';
import { testLive, testSnapshot } from '../../support/fake-monitor/snapshot.ts';
import { frostAlarm as frost } from '../../support/samples.ts';

/** An audio context that writes down what it is to play, and sounds when it is let. */
function fakeAudio() {
  const tones: { frequencyHz: number; startS: number; endS: number }[] = [];
  const letGo: (() => void)[] = [];
  const context = {
    currentTime: 5,
    destination: {},
    resume: () => new Promise<void>((resolve) => letGo.push(resolve)),
    createGain: () => ({
      gain: { setValueAtTime: vi.fn(), linearRampToValueAtTime: vi.fn() },
      connect: vi.fn(),
    }),
    createOscillator() {
      const one = { frequencyHz: 0, startS: 0, endS: 0 };
      tones.push(one);
      return {
        frequency: {
          set value(hertz: number) {
            one.frequencyHz = hertz;
          },
        },
        connect: vi.fn(),
        start: (second: number) => {
          one.startS = second;
        },
        stop: (second: number) => {
          one.endS = second;
        },
      };
    },
  };
  let nowMs = 0;
  const made = vi.fn(() => context as unknown as SoundContext);
  const sound = createAlarmSound(made, () => nowMs);
  const settled = async () => {
    for (const go of letGo.splice(0)) go();
    await new Promise((resolve) => setTimeout(resolve));
  };
  return {
    sound,
    tones,
    made,
    settled,
    at: (ms: number) => {
      nowMs = ms;
    },
  };
}

describe('the sound', () => {
  test('is two short tones, one after the other', async () => {
    const { sound, tones, settled } = fakeAudio();
    sound.play();
    await settled();
    expect(tones.map(({ frequencyHz }) => frequencyHz)).toEqual([880, 660]);
    expect(tones[0]?.startS).toBe(5);
    expect(tones[1]?.startS).toBe(tones[0]?.endS);
    expect(tones[1]?.endS).toBeCloseTo(5.36, 6);
  });

  test('comes once for many alarms, and again after the pause', async () => {
    const { sound, tones, settled, at, made } = fakeAudio();
    for (let alarm = 0; alarm < 5; alarm++) sound.play();
    at(pauseMs - 1);
    sound.play();
    await settled();
    expect(tones).toHaveLength(0);
    at(pauseMs);
    sound.play();
    await settled();
    expect(tones).toHaveLength(2);
    expect(made).toHaveBeenCalledOnce();
  });

  test.each([
    [lateMs, 2],
    [lateMs + 1, 0],
  ])('that was held back for %i ms plays %i tones', async (heldMs, count) => {
    const { sound, tones, settled, at } = fakeAudio();
    sound.play();
    at(heldMs);
    await settled();
    expect(tones).toHaveLength(count);
  });

  test('is missed in silence where there is no audio', async () => {
    const sound = createAlarmSound(
      () => {
        throw new Error('no audio here');
      },
      () => 0,
    );
    expect(() => sound.play()).not.toThrow();
    await new Promise((resolve) => setTimeout(resolve));
  });

  test('is off until somebody wants it', () => {
    expect(defaultChoices.alarmSound).toBe(false);
  });
});

const state = (sites: Record<string, Alarm[]>): LiveState => ({
  ...emptyLive,
  sites: Object.fromEntries(
    Object.entries(sites).map(([name, alarms]) => [
      name,
      { live: testLive({ name, snapshot: testSnapshot({ alarms }) }), heardAtMs: 0 },
    ]),
  ),
});

describe('an alarm that is new', () => {
  const calm = state({ a: [], b: [] });
  const later: Alarm = { ...frost, sinceMs: 2 };
  test.each([
    ['came at a site', calm, state({ a: [], b: [frost] }), true],
    ['came again', state({ a: [frost] }), state({ a: [later] }), true],
    ['stood before', state({ a: [frost] }), state({ a: [frost] }), false],
    ['was seen already', state({ a: [] }), state({ a: [{ ...frost, state: 'acknowledged' }] }), false],
    ['stands at a site first heard of', state({}), state({ a: [frost] }), false],
    ['went', state({ a: [frost] }), calm, false],
  ] as const)('%s: it is news or not', (_what, before, after, news) => {
    expect(bringsAlarm(before, after)).toBe(news);
  });
  test('is looked for only when something was heard', () => {
    const ringing = state({ a: [frost] });
    expect(bringsAlarm({ ...ringing, nowMs: 1 }, { ...ringing, nowMs: 2 })).toBe(false);
  });
});
