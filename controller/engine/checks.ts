import { finite } from './input.ts';

export type Check = (value: unknown) => boolean;

/** A count or a total. */
export const amount: Check = (value) => finite(value) && value >= 0;
/** The speed of a pump. */
export const fraction: Check = (value) => finite(value) && value >= 0 && value <= 1;
/** A heat rate that no loop reaches, yet far from where a sum would run over [W]. */
const mostW = 1e12;
export const powerOrNull: Check = (value) => value === null || (finite(value) && Math.abs(value) <= mostW);
export const flag: Check = (value) => value === true || value === false;
export const text: Check = (value) => typeof value === 'string';
export const finiteOrNull: Check = (value) => value === null || finite(value);
export const textOrNull: Check = (value) => value === null || text(value);

/** Null for what is no record, a list included. */
export function record(value: unknown): Readonly<Record<string, unknown>> | null {
  return typeof value === 'object' && !Array.isArray(value)
    ? (value as Readonly<Record<string, unknown>> | null)
    : null;
}

export function isListOf(value: unknown, check: Check): boolean {
  if (!Array.isArray(value)) return false;
  for (let i = 0; i < value.length; i++) if (!check(value[i])) return false;
  return true;
}

/** Numbers by any name. */
export const isValues: Check = (value) => {
  const values = record(value);
  if (values === null) return false;
  for (const name in values) if (!finite(values[name])) return false;
  return true;
};
