import { flowFactor, heatRemovalFactor } from '../../controller/engine/pair/heat-removal.ts';
import { outsideResistanceM2KW } from '../physics/convection.ts';
import { efficiencyFactor } from '../physics/heat-removal.ts';
import { timeConstantS } from '../physics/lumped-pan.ts';
import type { Parts } from '../plant/parts.ts';
import { waterJKgK, waterKgL } from '../plant/water.ts';
import { bodyUnder, sheetIn } from './pan-body.ts';
import { figure, type Section } from './report.ts';
import { hotNoon, loadOf } from './stated-days.ts';

/** Winds that the losses are stated for [m/s]. */
export const lightMs = 1;
const freshMs = 4;

/** Flow factors of the pan with a flow through it, in light wind. */
export function factorsOf(parts: Parts, grossM2: number, flowLMin: number) {
  const sheet = sheetIn(parts, grossM2, lightMs);
  const flow = {
    capacityRateWK: (flowLMin / 60) * waterKgL * waterJKgK,
    areaM2: grossM2,
    lossWM2K: sheet.lossWM2K,
    efficiencyFactor: efficiencyFactor(sheet),
  };
  return { ...flow, flowFactor: flowFactor(flow), heatRemovalFactor: heatRemovalFactor(flow) };
}

/** What the pan loses, how slow it is and how well its sheet hands heat on. */
export function panSection(parts: Parts, grossM2: number, flowLMin: number): Section {
  const bodyAt = (windMs: number) => bodyUnder(parts, { ...loadOf(hotNoon, 0), windMs });
  const light = bodyAt(lightMs);
  const fresh = bodyAt(freshMs);
  const factors = factorsOf(parts, grossM2, flowLMin);
  const outsideM2KW = outsideResistanceM2KW(freshMs, 0.9, 10);
  return {
    title: 'Pan and sheet',
    figures: [
      figure('Loss at 1 m/s', light.lossWM2K, 'W/m2K', 'Heat lost for each kelvin over the air.'),
      figure('Loss at 4 m/s', fresh.lossWM2K, 'W/m2K', 'Wind takes most of what an uncovered sheet gains.'),
      figure(
        'Of it down, with the outside surface of ISO 6946',
        1 / (1 / parts.traits.insulationWM2K + outsideM2KW),
        'W/m2K',
        'What better insulation could save at most.',
      ),
      figure('Heat capacity', light.capacityJM2K / 1000, 'kJ/m2K', 'Warmed before any heat comes home.'),
      figure(
        'Time constant at 1 m/s',
        timeConstantS(light) / 3600,
        'h',
        'How long the pan remembers the sun.',
      ),
      figure(
        'Time constant at 4 m/s',
        timeConstantS(fresh) / 3600,
        'h',
        'And how fast it forgets it in wind.',
      ),
      figure(
        "Efficiency factor F'",
        factors.efficiencyFactor,
        '1',
        'Share that the sheet hands on to water below it.',
      ),
      figure(
        "Flow factor F''",
        factors.flowFactor,
        '1',
        'What is lost by letting the water warm on its way.',
      ),
      figure('Heat removal factor FR', factors.heatRemovalFactor, '1', 'Both together; above 0.8 is good.'),
    ],
    warnings: [],
  };
}
