import { differenceIn, heatIn, temperatureIn, type Units } from './units.ts';

/** A number with a unit that somebody may choose another for, where it stands alone in a sentence. */
const quantity = /(?<![\w.,])(-?\d+(?:\.(\d+))?)(\s?)(°C|K|kWh)(?![\w/²°])/gu;

/**
 * A sentence of the controller with its numbers in the chosen units. The controller writes degrees Celsius, kelvin and
 * kilowatt hours with a decimal point; each number keeps as many digits after it as it had.
 */
export function sentenceIn(units: Units, sentence: string): string {
  return sentence.replace(
    quantity,
    (whole, number: string, decimals: string | undefined, space: string, unit) => {
      const [value, symbol] = converted(units, Number(number), unit);
      return symbol === unit ? whole : `${value.toFixed(decimals?.length ?? 0)}${space}${symbol}`;
    },
  );
}

function converted(units: Units, value: number, unit: '°C' | 'K' | 'kWh'): readonly [number, string] {
  if (unit === 'kWh') return [heatIn(units.heat, value * 3.6e6), units.heat];
  if (units.temperature === 'C') return [value, unit];
  const inUnit =
    unit === 'K' ? differenceIn(units.temperature, value) : temperatureIn(units.temperature, value);
  return [inUnit, '°F'];
}
