import type { Channel } from '../../shared-types/channels.ts';
import type { FittedParameter, LoopFit, SensorError } from '../../shared-types/tuning.ts';
import { type TraitName, traitDeclarations } from '../plant/traits.ts';
import { at } from '../plant/water.ts';
import { gathersAllTheSun } from './all-the-sun.ts';
import { type Told, toldOf } from './held.ts';
import { erringOf, measuredOf } from './measured.ts';
import { type LoopModel, loopModel } from './model/loop-problem.ts';
import { type Stretch, stretchOf } from './model/stretch.ts';
import { consideredTraits, errorUnknowns, traitUnknowns, windTraits } from './model/unknowns.ts';
import { type Posterior, posteriorOf } from './posterior.ts';
import { residualTest } from './residual-tests.ts';
import { type Fitted, type GoOn, search } from './search.ts';
import { heldWords, type Seen, verdictsOf, windWords } from './verdicts.ts';
import type { LoggedSpan } from './world/span.ts';

/**
 * Finds what logged days say of their loop.
 *
 * @param spans - Days of one loop, 1 or more. @param goOn - Told how far it is; false gives up.
 * @returns A fit that did not converge holds no number, only words.
 */
export function fitLoop(spans: readonly LoggedSpan[], goOn: GoOn = () => true): LoopFit {
  const stretches = spans.map(stretchOf);
  const fit = emptyFit(spans);
  const { site } = spans[0] as LoggedSpan;
  const missing = whatIsMissing(stretches) ?? stoodStill(spans);
  if (missing !== undefined) return { ...fit, verdicts: [missing, ...remarksOf(spans)] };
  const windMeasured = measuredOf(stretches).includes('windMs');
  const unknowns = [
    ...traitUnknowns(site, windMeasured),
    ...errorUnknowns(
      erringOf(stretches),
      stretches.map(({ span }) => span.minutes.count),
    ),
  ];
  const model = loopModel(stretches, unknowns);
  const tooLittle = tooLittleSeen(model.misfits(unknowns.map(({ mean }) => mean)));
  if (tooLittle !== undefined) return { ...fit, verdicts: [tooLittle, ...remarksOf(spans)] };
  const result = search(model, goOn);
  if (!('found' in result))
    return { ...fit, verdicts: [`The fit did not converge: ${result.why}.`, ...remarksOf(spans)] };
  return reportOf(fit, model, result, { spans, stretches, windMeasured });
}

function emptyFit(spans: readonly LoggedSpan[]): LoopFit {
  return {
    schemaVersion: 1,
    site: (spans[0] as LoggedSpan).site.name,
    days: spans.map(({ day }) => day),
    converged: false,
    parameters: [],
    sensorErrors: [],
    covariance: [],
    residuals: [],
    verdicts: [],
  };
}

function whatIsMissing(stretches: readonly Stretch[]): string | undefined {
  const measured = measuredOf(stretches);
  if (!measured.includes('panSheetC') && !measured.includes('panOutletC'))
    return 'No thermometer of the pan was read in half of each day: nothing of the loop can be told.';
  if (!measured.includes('ambientC'))
    return (
      'No thermometer of the air was read in half of each day: what the pan loses cannot be told from what the air did. ' +
      'A day can be lived again all the same, which tells the light that the pan took up.'
    );
  return undefined;
}

/** A loop that is locked all day moves no water, and nobody knows what lies in its pan. */
function stoodStill(spans: readonly LoggedSpan[]): string | undefined {
  const ran = spans.some(({ phases, dayFromMs }) => {
    const before = phases.findLast(({ fromMs }) => fromMs <= dayFromMs);
    const own = phases.filter(({ fromMs }) => fromMs > dayFromMs);
    return [...(before === undefined ? [] : [before]), ...own].some(({ phase }) => phase !== 'stopped');
  });
  return ran
    ? undefined
    : 'The loop stood stopped for safety all the time: nothing of it can be told. Days on which it ran are wanted.';
}

/** Fewer compared blocks of the pan than this tell nothing: four hours. A design choice. */
const leastBlocks = 24;

function tooLittleSeen(misfits: readonly { channel: Channel; apart: Float64Array }[]): string | undefined {
  const pan = misfits.filter(({ channel }) => channel === 'panSheetC' || channel === 'panOutletC');
  const blocks = pan.reduce((sum, { apart }) => sum + apart.length, 0);
  if (blocks >= leastBlocks) return undefined;
  return `Only ${blocks} times of ten minutes in which the loop did the same for a while: ${leastBlocks} are the least.`;
}

function remarksOf(spans: readonly LoggedSpan[]): string[] {
  return spans.flatMap(({ day, remarks }) => remarks.map((text) => `${day}: ${text}`));
}

interface From {
  readonly spans: readonly LoggedSpan[];
  readonly stretches: readonly Stretch[];
  readonly windMeasured: boolean;
}

function reportOf(
  fit: LoopFit,
  model: LoopModel,
  fitted: Fitted,
  { spans, stretches, windMeasured }: From,
): LoopFit {
  const posterior = posteriorOf(model, fitted);
  const allTheSun = gathersAllTheSun(posterior, stretches);
  const told = toldOf(posterior);
  const residuals = [...Map.groupBy(fitted.misfits, ({ channel }) => channel)].map(([channel, own]) => ({
    channel,
    ...residualTest(own),
  }));
  const seen: Seen = { stretches, windMeasured, allTheSun };
  const parameters = parametersOf(posterior, told, seen);
  return {
    ...fit,
    converged: true,
    parameters,
    sensorErrors: sensorErrorsOf(posterior, told),
    covariance: told.covariance,
    residuals: residuals.map(({ runsZ: _, ...kept }) => kept),
    verdicts: [...verdictsOf(parameters, told.covariance, residuals, seen), ...remarksOf(spans)],
  };
}

/** Numbered as in the covariance. */
const errorOf = (covariance: readonly (readonly number[])[], number: number) =>
  Math.sqrt(at(covariance[number] ?? [], number));

function sensorErrorsOf({ known }: Posterior, { fitted, values, covariance }: Told): SensorError[] {
  return fitted.flatMap((index, number) => {
    const { sensor } = known[index] ?? {};
    if (sensor === undefined) return [];
    return [{ ...sensor, value: at(values, index), standardError: errorOf(covariance, number) }];
  });
}

function parametersOf(
  { known }: Posterior,
  { fitted, held, values, covariance }: Told,
  seen: Seen,
): FittedParameter[] {
  const entry = (name: TraitName, value: number) => ({ name, unit: traitDeclarations[name].unit, value });
  const nameOf = (index: number) => known[index]?.trait;
  const usual = (name: TraitName, heldBecause: string) => ({
    ...entry(name, traitDeclarations[name].default),
    standardError: null,
    heldBecause,
  });
  return [
    ...fitted.flatMap((index, number) => {
      const name = nameOf(index);
      if (name === undefined) return [];
      const standardError = errorOf(covariance, number);
      return [{ ...entry(name, at(values, index)), standardError, heldBecause: null }];
    }),
    ...held.flatMap((index) => {
      const name = nameOf(index);
      return name === undefined ? [] : [usual(name, heldWords(name, seen))];
    }),
    ...(seen.windMeasured ? [] : windTraits.map((name) => usual(name, windWords))),
    ...consideredTraits.map((name) => usual(name, 'thermometers differ by more than it does')),
    usual('storeLossFactor', 'what is drawn by night cannot be told from what the store loses'),
  ];
}
