import type { Channel } from '../../../shared-types/channels.ts';
import type { PossibleLoop } from '../possible-loop.ts';
import type { LoggedSpan } from './span.ts';

/** The span as sensors without their known errors would have logged it. */
export function putRight(span: LoggedSpan, { sensorErrors }: PossibleLoop): LoggedSpan {
  const { minutes } = span;
  const values = { ...minutes.values };
  for (const channel of Object.keys(values) as Channel[]) {
    const column = values[channel];
    const error = sensorErrors[channel];
    if (column === undefined || error === undefined) continue;
    const { share, offset } = error;
    values[channel] = column.map((value) => (value - offset) / (1 + share));
  }
  return { ...span, minutes: { ...minutes, values } };
}
