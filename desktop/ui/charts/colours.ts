/**
 * Colours with a meaning. Surfaces and text stand as variables in styles/theme.css; what is here is
 * drawn by script, and a test holds it against the surfaces it is drawn on.
 */
export type Scheme = 'light' | 'dark';

/** What charts and drawings are drawn on. */
export const surfaces: Readonly<Record<Scheme, string>> = { light: '#ffffff', dark: '#1e1e1e' };

export interface Rgb {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/** @param hex - A colour such as #1e90ff. */
export function parseHex(hex: string): Rgb {
  const channel = (from: number) => Number.parseInt(hex.slice(from, from + 2), 16);
  return { red: channel(1), green: channel(3), blue: channel(5) };
}

export function formatHex({ red, green, blue }: Rgb): string {
  const two = (value: number) => Math.round(value).toString(16).padStart(2, '0');
  return `#${two(red)}${two(green)}${two(blue)}`;
}

/** Relative luminance, 0 to 1 (WCAG 2.2, definition of relative luminance). */
export function luminance(hex: string): number {
  const linear = (value: number) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  const { red, green, blue } = parseHex(hex);
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

/** Contrast ratio of two colours, 1 to 21 (WCAG 2.2, definition of contrast ratio). */
export function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}
