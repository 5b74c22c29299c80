import type { FittedParameter, LoopFit } from '../../shared-types/tuning.ts';
import type { TraitName } from '../plant/traits.ts';
import { allTheSunWords } from './all-the-sun.ts';
import { notMeasuredWords } from './measured.ts';
import type { Stretch } from './model/stretch.ts';
import type { ResidualTest } from './residual-tests.ts';

/** What the days had to show. */
export interface Seen {
  readonly stretches: readonly Stretch[];
  readonly windMeasured: boolean;
  /** The sheet gathers all the sun, whatever its efficiency is. */
  readonly allTheSun: boolean;
}

export const windWords = 'the wind was not measured';

/** Why the data cannot tell a trait, as far as that is plain. */
export function heldWords(name: TraitName, { stretches, allTheSun }: Seen): string {
  const speeds = speedsOf(stretches);
  const bright = stretches.some(({ conditions }) => conditions.some((c) => c.irradianceWM2 > brightWM2));
  const sunTerm = name === 'opticalEfficiency' || name === 'windOpticalSM';
  if (sunTerm && stretches.some(({ sunMeasured }) => !sunMeasured)) return 'the sun was not measured';
  if (sunTerm && !bright) return 'there was hardly any sun';
  if (name === 'opticalEfficiency' && allTheSun) return allTheSunWords;
  if (speeds.length === 0 && (name === 'flowFactor' || name === 'contactWM2K')) return 'the pump never ran';
  return 'the days tell no more of it than was known before';
}

/** A day that never gets brighter has no sun to speak of [W/m2]. */
const brightWM2 = 250;

/** Speeds that the pump ran at, to a hundredth. */
function speedsOf(stretches: readonly Stretch[]): number[] {
  const speeds = new Set<number>();
  for (const { span } of stretches)
    for (const drives of span.minutes.drives)
      for (const { outputs } of drives) speeds.add(Math.round(100 * outputs.pumpFraction) / 100);
  speeds.delete(0);
  return [...speeds];
}

type Channels = readonly (ResidualTest & { readonly channel: string })[];

/** What the data can and cannot tell, in plain words. */
export function verdictsOf(
  parameters: readonly FittedParameter[],
  covariance: LoopFit['covariance'],
  residuals: Channels,
  seen: Seen,
): string[] {
  const held = parameters.filter(({ heldBecause }) => heldBecause !== null);
  return [
    ...held.map(
      ({ name, value, unit, heldBecause }) =>
        `${name} is held at ${unit === '1' ? value : `${value} ${unit}`}: ${heldBecause}.`,
    ),
    ...notMeasuredWords(seen.stretches),
    ...seenWords(seen),
    ...togetherWords(parameters, covariance),
    ...residuals.flatMap(residualWords),
  ];
}

function seenWords({ stretches, windMeasured }: Seen): string[] {
  const words: string[] = [];
  if (!windMeasured)
    words.push(
      'Where the wind was not measured some is assumed; the loss is known only as far as that may be wrong.',
    );
  if (stretches.some(({ sunMeasured }) => !sunMeasured))
    words.push('Where the sun was not measured only the dark hours are compared.');
  if (speedsOf(stretches).length === 1)
    words.push('The pump ran at one speed only: its flow at others follows the curve of a usual pump.');
  words.push('Sensors are taken to lag as their make does; what is quicker than a minute is not looked at.');
  return words;
}

/** Beyond this two parameters are known together rather than each by itself. */
const together = 0.9;

function togetherWords(parameters: readonly FittedParameter[], covariance: LoopFit['covariance']): string[] {
  const fitted = parameters.filter(({ standardError }) => standardError !== null);
  return fitted.flatMap((a, i) =>
    fitted.slice(i + 1).flatMap((b, offset) => {
      const shared = covariance[i]?.[i + 1 + offset] ?? 0;
      const correlation = shared / ((a.standardError ?? 1) * (b.standardError ?? 1));
      if (Math.abs(correlation) < together) return [];
      return [`${a.name} and ${b.name} are known together only: correlation ${correlation.toFixed(2)}.`];
    }),
  );
}

/** Neighbours that belong together by more than chance. */
const sharedCorrelation = 0.5;
const sharedRuns = -2;

function residualWords({ channel, rms, lagOneCorrelation, runsZ }: Channels[number]): string[] {
  if (lagOneCorrelation < sharedCorrelation || runsZ > sharedRuns) return [];
  return [
    `${channel}: the loop lacks something small; what is left over (${rms.toPrecision(2)}) lasts longer than ten` +
      ` minutes (correlation ${lagOneCorrelation.toFixed(2)}, runs ${runsZ.toFixed(1)}); errors are widened by that.`,
  ];
}
