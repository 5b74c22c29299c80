import { differenceIn, heatIn, temperatureIn, type Units } from './units.ts';

/** A number with a unit that somebody may choose another for, where it stands alone in a sentence, or two with one. */
const quantity = /(?<![\w.,])(?:(-?\d+(?:\.\d+)?) to )?(-?\d+(?:\.\d+)?)(\s?)(°C|K|kWh)(?![\w/²°])/gu;

/**
 * A sentence of controller or simulation with its numbers in the chosen units. They write degrees Celsius, kelvin and
 * kilowatt hours with a decimal point. A temperature keeps as many digits after it as it had; a difference or an amount
 * of heat has one at least where it needs one, since a whole kelvin is no whole number of degrees Fahrenheit.
 */
export function sentenceIn(units: Units, sentence: string): string {
  return sentence.replace(
    quantity,
    (whole, from: string | undefined, number: string, space: string, unit: Unit) => {
      const symbol = symbolIn(units, unit);
      if (symbol === unit) return whole;
      const start = from === undefined ? '' : `${shown(units, from, unit)} to `;
      return `${start}${shown(units, number, unit)}${space}${symbol}`;
    },
  );
}

type Unit = '°C' | 'K' | 'kWh';

function symbolIn(units: Units, unit: Unit): string {
  if (unit === 'kWh') return units.heat;
  return units.temperature === 'C' ? unit : '°F';
}

function shown(units: Units, number: string, unit: Unit): string {
  const digits = number.split('.')[1]?.length ?? 0;
  const value = converted(units, Number(number), unit);
  if (unit === '°C' || digits > 0) return value.toFixed(digits);
  return value.toFixed(1).replace('.0', '');
}

function converted(units: Units, value: number, unit: Unit): number {
  if (unit === 'kWh') return heatIn(units.heat, value * 3.6e6);
  return unit === 'K' ? differenceIn(units.temperature, value) : temperatureIn(units.temperature, value);
}
