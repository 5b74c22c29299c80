import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { RequestedOperation } from '../../../shared-types/messages.ts';
import { en } from '../text/en.ts';

/** Requests that this screen makes. */
export const askedOnAlarms = ['acknowledge', 'shelve', 'unshelve'] as const;

/** A request about an alarm in words; empty for any other. */
export function askedName(operation: RequestedOperation): string {
  if (!('alarm' in operation)) return '';
  return `${en.alarms.asked[operation.kind]}, ${alarmCatalogue[operation.alarm].title}`;
}
