import type { Settings } from '../../shared-types/settings.ts';
import { depthPa, gravityMS2 } from '../physics/gravity.ts';
import { pipeVelocityMs, siphonFromMs, siphonSureMs } from '../physics/siphon.ts';
import { fillLiftM, firstLiftM } from '../plant/impossible.ts';
import type { Parts } from '../plant/parts.ts';
import { waterKgL } from '../plant/water.ts';
import { figure, type Remark, type Section, warnIf } from './report.ts';
import type { Trial } from './trial.ts';

/** What the pump can lift, how fast it fills, and whether the return pipe will run full. */
export function pumpSection(parts: Parts, settings: Settings, trial: Trial): Section {
  const velocityMs = pipeVelocityMs(trial.loopLMin, parts.traits.pipeInsideMm / 1000);
  const { siphons } = parts.plumbing;
  const siphon = [
    figure(
      'Velocity in the return pipe',
      velocityMs,
      'm/s',
      `${siphonFromMs} to ${siphonSureMs.toFixed(1)} carry its air away, so that it runs full and helps to lift.`,
    ),
    figure(
      'Return pipe filled after half an hour',
      trial.returnFullFraction,
      '1',
      'As the simulated loop has it.',
    ),
  ];
  return {
    title: 'Pump and filling',
    figures: [
      figure('Head at no flow', parts.flows.shutOffM, 'm', '4/3 of the rated head (common practice).'),
      figure('Lift at the start', firstLiftM(parts), 'm', 'From the full source up to the pan.'),
      figure(
        'Lift at the end of a fill',
        fillLiftM(parts),
        'm',
        'The source has sunk by what the pan holds.',
      ),
      figure('Head for a balancing valve', parts.flows.throttleM, 'm', 'Bends and fittings are part of it.'),
      figure(
        'Flow while filling, least',
        trial.leastFillLMin,
        'L/min',
        'Near the end, when the lift is greatest.',
      ),
      figure('Flow while filling, most', trial.mostFillLMin, 'L/min', 'At the start.'),
      figure('Flow through the full loop', trial.loopLMin, 'L/min', 'After half an hour.'),
      ...(siphons ? siphon : []),
      figure(
        'Fill time',
        trial.fillS,
        's',
        `Settings: full by ${settings.fillTimeS} s, failed by ${settings.fillTimeoutS} s.`,
      ),
    ],
    warnings: [
      ...fillWarnings(parts, settings, trial),
      ...flowWarnings(parts, trial),
      ...(siphons ? siphonWarnings(velocityMs) : []),
      ...(siphons ? pullWarnings(parts) : []),
    ],
  };
}

function fillWarnings(
  { channels }: Parts,
  { fillTimeS, fillTimeoutS }: Settings,
  { fillS }: Trial,
): readonly Remark[] {
  if (fillS === null) return [];
  const proven = channels.includes('flowLMin') || channels.includes('panLevelMm');
  const seconds = fillS.toFixed(0);
  return [
    ...warnIf(
      fillS > fillTimeoutS,
      'fill-timeout',
      `The pan takes ${seconds} s to fill; fillTimeoutS calls every fill failed after ${fillTimeoutS} s.`,
    ),
    ...warnIf(
      !proven && fillS > fillTimeS,
      'fill-time',
      `The pan takes ${seconds} s to fill; with neither flow nor level sensor fillTimeS counts it as full after ${fillTimeS} s.`,
    ),
  ];
}

/** Below this share of its rating the flow is no longer what the site file says. */
const reachedFraction = 0.9;

function flowWarnings({ pump }: Parts, { loopLMin }: Trial): readonly Remark[] {
  const ratedLMin = (pump.ratedKgS / waterKgL) * 60;
  return warnIf(
    loopLMin < reachedFraction * ratedLMin,
    'flow-below-rated',
    `The loop passes ${loopLMin.toFixed(1)} L/min; the site file says ${ratedLMin.toFixed(1)} L/min, and meters heat by it where no flow is measured.`,
  );
}

/** Suction that a light cover may not stand [Pa]; half a metre of water (from memory, no standard behind it). */
const mostPullPa = 5000;

function pullWarnings({ plumbing }: Parts): readonly Remark[] {
  const pullPa = depthPa(plumbing.pullFraction * Math.max(0, plumbing.dropM), 1000);
  return warnIf(
    pullPa > mostPullPa,
    'siphon-suction',
    `The full return pipe pulls on the pan with up to ${(pullPa / 1000).toFixed(1)} kPa, ${(pullPa / gravityMS2).toFixed(0)} kg/m2 on the sheet: let air in at the outlet, and reckon without its help (siphonPullFraction 0).`,
  );
}

function siphonWarnings(velocityMs: number): readonly Remark[] {
  const words = `${velocityMs.toFixed(2)} m/s in the return pipe`;
  if (velocityMs < siphonFromMs)
    return [
      { code: 'no-siphon', text: `${words} carry no air away: the pump lifts the whole height for good.` },
    ];
  return warnIf(
    velocityMs < siphonSureMs,
    'siphon-doubtful',
    `${words} may or may not carry its air away: practice says 0.6, experiments say from 0.3 on.`,
  );
}
