import type { AlarmPriority, AlarmState } from '../../../shared-types/alarms.ts';
import type { ReadingCause } from '../../../shared-types/readings.ts';

/** Why a reading is doubted or not used. */
export const causeTitles: Readonly<Record<ReadingCause, string>> = {
  missing: 'never heard',
  'open-circuit': 'open circuit',
  'short-circuit': 'short circuit',
  unreadable: 'not readable',
  'out-of-range': 'outside its range',
  stale: 'no fresh value',
  'not-a-number': 'not a number',
  jumped: 'jumped too fast',
  stuck: 'does not move',
  noisy: 'scatters too much',
  disagrees: 'disagrees with its neighbours',
};

export const priorityTitles: Readonly<Record<AlarmPriority, string>> = {
  urgent: 'Act within minutes',
  soon: 'Act within the day',
  'when-convenient': 'At the next visit',
};

export const alarmStateTitles: Readonly<Record<AlarmState, string>> = {
  unacknowledged: 'new',
  acknowledged: 'seen',
  'returned-unacknowledged': 'over, not yet seen',
  shelved: 'shelved',
  suppressed: 'follows from another',
};
