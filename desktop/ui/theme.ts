import { createTheme, type MantineColorsTuple } from '@mantine/core';

/** One quiet blue for what is chosen. Each shade that carries text reads at 4.5:1 or better. */
const water: MantineColorsTuple = [
  '#eef5fb',
  '#d9e8f5',
  '#b3d1ea',
  '#8ab8de',
  '#7db4e2',
  '#4d8fc7',
  '#2f73ab',
  '#1f5f94',
  '#174f7e',
  '#103e64',
];

/** Greys without a tint, so that the temperature scale is the only colour of a calm screen. */
const dark: MantineColorsTuple = [
  '#ececea',
  '#d0d0cc',
  '#b4b4af',
  '#8f8f8a',
  '#565653',
  '#3e3e3b',
  '#2b2b2a',
  '#1e1e1e',
  '#161616',
  '#101010',
];

export const theme = createTheme({
  primaryColor: 'water',
  primaryShade: { light: 8, dark: 7 },
  colors: { water, dark },
  fontFamily: 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "DejaVu Sans", sans-serif',
  fontFamilyMonospace: 'ui-monospace, "DejaVu Sans Mono", Menlo, Consolas, monospace',
  focusClassName: 'focusable',
  defaultRadius: 'md',
  cursorType: 'pointer',
  respectReducedMotion: true,
});
