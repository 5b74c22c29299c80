import { expect, test } from 'vitest';
import { waterColour } from '../../../desktop/ui/charts/temperature-scale.ts';
import { storeLayers } from '../../../desktop/ui/live/store-layers.ts';

const top = { height: 1, temperatureC: 58 };
const middle = { height: 0.5, temperatureC: 41 };
const bottom = { height: 0, temperatureC: 19 };

test('layers run from the top down, whatever the order of the probes', () => {
  const layers = storeLayers([bottom, top, middle]);
  const offsets = layers.map((layer) => layer.offset);
  expect(offsets).toEqual([...offsets].sort((a, b) => a - b));
  expect(layers[0]?.colour).toBe(waterColour(58));
  expect(layers.find((layer) => layer.offset === 0.5)?.colour).toBe(waterColour(41));
  expect(layers.at(-1)?.colour).toBe(waterColour(19));
});

test('between two probes the temperature changes evenly', () => {
  const half = storeLayers([top, bottom]).find((layer) => Math.abs(layer.offset - 0.5) < 1e-9);
  expect(half?.colour).toBe(waterColour((58 + 19) / 2));
});

test('beyond the outermost probe its temperature holds', () => {
  const layers = storeLayers([middle]);
  expect(new Set(layers.map((layer) => layer.colour))).toEqual(new Set([waterColour(41)]));
  expect(layers.map((layer) => layer.offset)).toContain(0);
  expect(layers.map((layer) => layer.offset)).toContain(1);
});

test('without a probe there is no colour', () => {
  expect(storeLayers([])).toEqual([]);
});
