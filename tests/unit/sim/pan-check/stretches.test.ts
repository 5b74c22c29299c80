import { describe, expect, it } from 'vitest';
import type { Channel } from '../../../../shared-types/channels.ts';
import { readSpan } from '../../../../sim/identify/world/span.ts';
import { type StretchesRead, stretchesOf } from '../../../../sim/pan-check/stretches.ts';
import { usualTraits } from '../../../../sim/plant/traits.ts';
import { dayName, goodPan, type MinuteDone, panLog, panMinute, site } from './pan-days.ts';

const usual = (minute: number) => panMinute(goodPan, 0, minute);

function read(minuteOf: (minute: number) => MinuteDone | null, own = site): StretchesRead {
  const span = readSpan(
    panLog(1, (_, minute) => minuteOf(minute), own),
    dayName(0),
  );
  if (!span.ok) throw new Error(span.why);
  return stretchesOf(span.span, usualTraits);
}

function stretches(minuteOf: (minute: number) => MinuteDone | null, own = site) {
  const told = read(minuteOf, own);
  if (!told.ok) throw new Error(told.why);
  return told.stretches;
}

/** A minute without a sensor. */
const without =
  (...channels: readonly Channel[]) =>
  (minute: number): MinuteDone => {
    const { readings, ...rest } = usual(minute);
    const kept = Object.entries(readings).filter(([name]) => !channels.includes(name as Channel));
    return { ...rest, readings: Object.fromEntries(kept) };
  };

describe('the steady stretches of a day', () => {
  it('begin half an hour after the pump, each half an hour long', () => {
    // Circulating from 8 to 16 h.
    expect(stretches(usual)).toHaveLength(15);
    const hours = stretches(usual).map(({ solarHour }) => solarHour);
    expect(
      hours.every((hour, index) => index === 0 || Math.abs(hour - (hours[index - 1] as number) - 0.5) < 0.01),
    ).toBe(true);
    expect(Math.abs((hours[0] as number) - 8.75)).toBeLessThan(0.1);
  });

  it('tell the balance of the pan', () => {
    for (const { gaveWM2, lightWM2, overAirK } of stretches(usual))
      expect(Math.abs(goodPan.efficiency * lightWM2 - goodPan.lossWM2K * overAirK - gaveWM2)).toBeLessThan(2);
  });

  it('end where the pump rests, the log has a hole, or water and weather are not read', () => {
    const rests = (minute: number) => ({
      ...usual(minute),
      circulates: usual(minute).circulates && minute !== 700,
    });
    // From 701 on half an hour has to pass again: 510 to 690, 731 to 941.
    expect(stretches(rests)).toHaveLength(13);
    expect(stretches((minute) => (minute === 700 ? null : usual(minute)))).toHaveLength(14);
    const blind = (channel: Channel, count: number) => (minute: number) =>
      minute >= 520 && minute < 520 + count ? without(channel)(minute) : usual(minute);
    // What is missed of sun and air is filled from both sides, and says as little as a missing outlet.
    for (const channel of ['panOutletC', 'flowLMin', 'irradianceWM2', 'ambientC'] as const)
      expect([stretches(blind(channel, 5)).length, stretches(blind(channel, 6)).length]).toEqual([15, 14]);
  });

  it('have no sheet where none is read', () => {
    expect(stretches(usual).every(({ sheetOverK }) => sheetOverK !== null)).toBe(true);
    expect(stretches(without('panSheetC')).every(({ sheetOverK }) => sheetOverK === null)).toBe(true);
  });

  it('take what the source shows for an inlet that is not measured', () => {
    const gave = (told: ReturnType<typeof stretches>) => told.map(({ gaveWM2 }) => gaveWM2);
    expect(gave(stretches(without('panInletC')))).toEqual(gave(stretches(usual)));
  });
});

describe('a day', () => {
  it.each([
    ['irradianceWM2', 'no sun was measured'],
    ['ambientC', 'no air was measured'],
    ['panOutletC', 'the water was not measured at both ends of the pan'],
  ] as const)('without %s is refused', (channel, why) => {
    expect(read(without(channel))).toEqual({ ok: false, why });
    // Read in two fifths of the day only.
    expect(read((minute) => (minute < 576 ? usual(minute) : without(channel)(minute)))).toEqual({
      ok: false,
      why,
    });
  });

  it('says what was assumed of it', () => {
    const remarks = (told: StretchesRead) => (told.ok ? told.remarks : []);
    expect(remarks(read(usual))).toEqual([]);
    const [flow, wind, sky] = remarks(read(without('flowLMin', 'windMs', 'longWaveWM2')));
    expect([flow, wind, sky]).toEqual([
      expect.stringContaining('No flow was measured'),
      expect.stringContaining('No wind was measured'),
      expect.stringContaining('long-wave light'),
    ]);
  });

  it('without a flow sensor is told by the rated flow, at full speed alone', () => {
    const slower = (minute: number) => ({ ...usual(minute), pumpFraction: 0.9 });
    const unmeasured = (minute: number) => ({ ...without('flowLMin')(minute), pumpFraction: 0.9 });
    expect([stretches(slower).length, stretches(unmeasured).length]).toEqual([15, 0]);
    const rated = { ...site, pump: { ...site.pump, ratedFlowLMin: 24 } };
    expect(stretches(without('flowLMin'), rated).map(({ gaveWM2 }) => gaveWM2)).toEqual(
      stretches(usual, rated).map(({ gaveWM2 }) => gaveWM2),
    );
  });
});
