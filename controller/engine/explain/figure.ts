import { finite } from '../input.ts';
import type { Values } from '../known.ts';

/** A number of a reason as text; `?` where the reason does not carry it. */
export function figure(values: Values, name: string, decimals = 1): string {
  const value = values[name];
  return finite(value) ? value.toFixed(decimals) : '?';
}

/** Where the pan stands against the store bottom, as text. */
export function againstStore(values: Values, name: string): string {
  const below = (values[name] ?? 0) < 0;
  const size = figure(values, name).replace('-', '');
  return `${size} K ${below ? 'below' : 'above'} the store bottom`;
}

/** A duration as text: seconds under two minutes, else minutes. */
export function duration(values: Values, name: string): string {
  const value = values[name];
  if (value === undefined) return '?';
  return value < 120 ? `${value.toFixed(0)} s` : `${(value / 60).toFixed(0)} min`;
}
