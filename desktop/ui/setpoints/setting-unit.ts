import { settingUnitSymbols } from '../../../shared-types/setting-title.ts';
import {
  defaultSettings,
  type SettingName,
  settingCouplings,
  settingDeclarations,
} from '../../../shared-types/settings.ts';
import { assertNever } from '../assert-never.ts';
import { differenceIn, type TemperatureUnit, temperatureIn, temperatureSymbols } from '../format/units.ts';

/** How a setpoint's number reads on the screen. */
export interface SettingUnit {
  readonly symbol: string;
  /** From the unit of the table to that of the screen. */
  readonly shown: (value: number) => number;
  /** Back again. Rounded where the units differ in size, so that a value that was shown comes back as it was. */
  readonly kept: (shown: number) => number;
}

/** Digits after the point to which a setpoint is written on the screen. A design choice. */
export const shownDigits = 3;

const roundedTo = (digits: number, value: number) => Number(value.toFixed(digits));

const asItIs = (symbol: string): SettingUnit => ({ symbol, shown: (value) => value, kept: (shown) => shown });

const differenceSymbols: Readonly<Record<TemperatureUnit, string>> = { C: 'K', F: '°F' };

export function settingUnit(name: SettingName, temperature: TemperatureUnit): SettingUnit {
  const { unit } = settingDeclarations[name];
  switch (unit) {
    case 'C':
      return {
        symbol: temperatureSymbols[temperature],
        shown: (valueC) => temperatureIn(temperature, valueC),
        kept: (shown) => (temperature === 'C' ? shown : roundedTo(shownDigits, (shown - 32) / 1.8)),
      };
    case 'K':
      return {
        symbol: differenceSymbols[temperature],
        shown: (valueK) => differenceIn(temperature, valueK),
        kept: (shown) => (temperature === 'C' ? shown : roundedTo(shownDigits, shown / 1.8)),
      };
    case 's':
    case 'min':
    case 'h':
    case '1/h':
    case '1/d':
      return asItIs(settingUnitSymbols[unit]);
    case '1':
      return {
        symbol: '%',
        shown: (value) => value * 100,
        kept: (shown) => roundedTo(shownDigits + 2, shown / 100),
      };
    default:
      return assertNever(unit);
  }
}

/** True for a setpoint that is either off or on: one that a rule of its own forbids to stand between. */
export function isSwitch(name: SettingName): boolean {
  return settingCouplings.some(
    ({ names, holds }) =>
      names.length === 1 && names[0] === name && !holds({ ...defaultSettings, [name]: 0.5 }),
  );
}
