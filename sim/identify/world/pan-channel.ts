import type { Channel } from '../../../shared-types/channels.ts';
import { isMeasured, readFraction } from './read-fraction.ts';
import type { LoggedSpan } from './span.ts';

/** The sheet's tells most of the pan. */
const panThermometers = ['panSheetC', 'panOutletC'] as const satisfies readonly Channel[];

/**
 * The thermometer that tells the pan of a logged day: the sheet's, else the outlet's. One that was read in too little of
 * the day stands behind one that was not; where both were, the one that was read more is better than none.
 */
export function panChannel(span: LoggedSpan): Channel | undefined {
  const { values } = span.minutes;
  const fraction = (channel: Channel) => readFraction(values[channel], span);
  return (
    panThermometers.find((channel) => isMeasured(channel, span)) ??
    panThermometers
      .filter((channel) => values[channel] !== undefined)
      .toSorted((a, b) => fraction(b) - fraction(a))[0]
  );
}
