const minuteMs = 60_000;

/**
 * The next instant at which a zone's clocks show a minute of the day [UTC ms], within 24 hours from now.
 * On a day when the clocks are put forward or back it may be off by that hour.
 */
export function nextLocalMinuteMs(nowMs: number, minuteOfDay: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(nowMs);
  const numberOf = (type: string) => Number(parts.find((part) => part.type === type)?.value ?? 0);
  const nowMinute = numberOf('hour') * 60 + numberOf('minute');
  const aheadMin = (minuteOfDay - nowMinute + 1440) % 1440;
  return Math.floor(nowMs / minuteMs) * minuteMs + aheadMin * minuteMs;
}
