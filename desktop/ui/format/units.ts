/** Units that an owner may choose between; the data itself stays in degrees Celsius and joules. */
export const temperatureUnits = ['C', 'F'] as const;
export type TemperatureUnit = (typeof temperatureUnits)[number];

export const heatUnits = ['kWh', 'MJ'] as const;
export type HeatUnit = (typeof heatUnits)[number];

export interface Units {
  readonly temperature: TemperatureUnit;
  readonly heat: HeatUnit;
}

/** A temperature in the chosen unit, from degrees Celsius (exact by definition). */
export function temperatureIn(unit: TemperatureUnit, valueC: number): number {
  return unit === 'C' ? valueC : valueC * 1.8 + 32;
}

/** A temperature difference in the chosen unit, from kelvin (exact by definition). */
export function differenceIn(unit: TemperatureUnit, valueK: number): number {
  return unit === 'C' ? valueK : valueK * 1.8;
}

/** Heat or electricity in the chosen unit, from joules (1 kWh is 3.6 MJ by definition). */
export function heatIn(unit: HeatUnit, valueJ: number): number {
  return unit === 'kWh' ? valueJ / 3.6e6 : valueJ / 1e6;
}

export const temperatureSymbols: Readonly<Record<TemperatureUnit, string>> = { C: '°C', F: '°F' };
