import { describe, expect, it } from 'vitest';
import { instantsOf, parseWrittenTime, zoneOf } from '../../../../sim/weather/local-time.ts';

const hours = (zone: string, text: string) => {
  const known = zoneOf(zone);
  const written = parseWrittenTime(text);
  if (known === undefined || written === undefined) throw new Error('unknown');
  return instantsOf(written.clockMs, known).map((utcMs) => new Date(utcMs).toISOString().slice(0, 16));
};

describe('times on the clocks of a zone', () => {
  it.each([
    ['Europe/Berlin', '2026-10-25 02:30', ['2026-10-25T00:30', '2026-10-25T01:30']],
    ['Europe/Berlin', '2026-03-29 02:30', []],
    ['Europe/Berlin', '2026-07-01 12:00', ['2026-07-01T10:00']],
    ['America/New_York', '2026-11-01 01:30', ['2026-11-01T05:30', '2026-11-01T06:30']],
    ['America/New_York', '2026-03-08 02:30', []],
    ['Asia/Kathmandu', '2026-01-01 00:00', ['2025-12-31T18:15']],
  ])('%s %s', (zone, text, instants) => {
    expect(hours(zone, text)).toEqual(instants);
  });

  it.each([
    '2026-02-30T00:00Z',
    '2026-01-01',
    '20260101T0000Z',
    '2026-01-01T24:00Z',
    '2026-01-01T23:59:60Z',
    '',
  ])('does not know "%s"', (text) => {
    expect(parseWrittenTime(text)).toBeUndefined();
  });
});
