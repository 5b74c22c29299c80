import { alarmCatalogue } from '../../../shared-types/alarm-catalogue.ts';
import type { AlarmCode } from '../../../shared-types/alarms.ts';
import type { Values } from '../known.ts';
import { figure } from './figure.ts';

const details: Readonly<Partial<Record<AlarmCode, (values: Values) => string>>> = {
  'frost-danger': (v) => ('panC' in v ? `The pan is at ${figure(v, 'panC')} °C.` : ''),
  'not-emptying': (v) => ('levelMm' in v ? `${figure(v, 'levelMm', 0)} mm of water stand in it.` : ''),
  'fill-locked': (v) => `${figure(v, 'failures', 0)} failures in a row.`,
  'flow-low': (v) => `${figure(v, 'flowLMin')} of ${figure(v, 'fullFlowLMin')} L/min pass.`,
  'poor-contact': (v) => `It stands ${figure(v, 'excessK')} K higher above the water than the heat explains.`,
  leak: (v) =>
    'lackingMm' in v
      ? `The reservoir lacks ${figure(v, 'lackingMm', 0)} mm.`
      : `The resting pan sinks by ${figure(v, 'rateMmH')} mm an hour.`,
  'reservoir-low': (v) =>
    `It stands at ${figure(v, 'levelMm', 0)} mm${'neededMm' in v ? `; a fill needs ${figure(v, 'neededMm', 0)} mm` : ''}.`,
  'liner-hot': (v) =>
    `The pan is at ${figure(v, 'panC', 0)} °C; too hot from ${figure(v, 'linerHotC', 0)} °C on.`,
  'liner-not-cooled': (v) =>
    `The pan is at ${figure(v, 'panC', 0)} °C; the liner stands ${figure(v, 'linerLimitC', 0)} °C.`,
  'scald-caution': (v) => `Its hottest sensor is at ${figure(v, 'storeC', 0)} °C.`,
  'frost-season-near': (v) => ('days' in v ? `It begins in ${figure(v, 'days', 0)} days.` : ''),
  'store-hot': (v) =>
    `It is at ${figure(v, 'storeC', 0)} °C; ${figure(v, 'maximumC', 0)} °C is the most it stands.`,
};

/** Head sentence of an alarm with its numbers; `detail` names what numbers cannot. */
export function alarmText(code: AlarmCode, values: Values, detail?: string): string {
  const numbers = details[code]?.(values) ?? '';
  const named = detail === undefined ? '' : `: ${detail}`;
  return `${alarmCatalogue[code].title}${named}.${numbers === '' ? '' : ` ${numbers}`}`;
}

/** Which outputs do not follow their command. */
export function unfollowedText(pump: boolean, drain: boolean): string {
  return [pump ? 'pump' : '', drain ? 'drain valve' : ''].filter((part) => part !== '').join(' and ');
}
