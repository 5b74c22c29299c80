import type { Channel } from '../../../shared-types/channels.ts';
import { clonePlant } from '../../course/best/clone-plant.ts';
import { outsideJ } from '../../course/harvest.ts';
import { type Account, emptyAccount } from '../../plant/account.ts';
import { advance } from '../../plant/advance.ts';
import type { DrawCourse } from '../../plant/draws.ts';
import { numberOf } from '../../plant/makes.ts';
import type { PlantState } from '../../plant/state.ts';
import type { Traits } from '../../plant/traits.ts';
import type { Conditions } from '../../weather/conditions.ts';
import { beginOf } from './begin.ts';
import { correctDraw, correctFactor, type Seen } from './correct.ts';
import { minuteMs } from './minutes.ts';
import { createResiduals, type Residuals } from './residuals.ts';
import { conditionsOf, type SkyColumns } from './sky-columns.ts';
import type { LoggedSpan } from './span.ts';
import { nudgeStore } from './store-sensors.ts';

/** Sun and draws are held for so many minutes each; a design choice: shorter ones follow the noise. */
export const windowMin = 10;

/** What a plant that was driven as the logged loop says of that loop's world. */
export interface Followed {
  /** By what the irradiance of the columns is to be multiplied, window by window. */
  readonly factors: Float64Array;
  readonly draws: DrawCourse;
  /** The loop as it stood when the day began. */
  readonly begin: PlantState;
  /** Heat that the followed loop brought home on the day [J]. */
  readonly homeJ: number;
  readonly residuals: Residuals;
  /** Long-wave light as the followed sun makes it. */
  readonly conditions: readonly Conditions[];
}

export interface FollowOptions {
  readonly traits: Partial<Traits>;
  /** How freely the sun may depart from the columns' from window to window: a standard deviation of the factor. */
  readonly factorStep: number;
  /** What the pan's thermometer shows more than the store bottom's when both are alike [K]. */
  readonly panOffsetK: number;
}

/** Drives a plant through a logged span and corrects sun and draws so that it goes where the log went. */
export function follow(span: LoggedSpan, sky: SkyColumns, options: FollowOptions): Followed {
  const { minutes, dayFromMs, dayToMs } = span;
  const windows = Math.ceil(minutes.count / windowMin);
  const factors = new Float64Array(windows).fill(1);
  const wantedKgS = Array.from({ length: windows }, () => 0);
  const draws = { fromMs: minutes.fromMs, stepMs: windowMin * minuteMs, wantedKgS };
  const unscaled = conditionsOf(sky, () => 1);
  const residuals = createResiduals(span);
  const plant = beginOf(span, options.traits, draws);
  let begin = clonePlant(plant);
  let heldAtFirstJ = outsideJ(plant);
  let account = emptyAccount();
  let factor = 1;

  for (let window = 0; window < windows; window++) {
    const from = window * windowMin;
    const startMs = minutes.fromMs + from * minuteMs;
    if (startMs >= dayToMs) break;
    // The window in which the day begins need not begin with it: the nearest does.
    if (Math.abs(startMs - dayFromMs) < (windowMin * minuteMs) / 2) {
      begin = clonePlant(plant);
      heldAtFirstJ = outsideJ(plant);
      account = emptyAccount();
    }
    const to = Math.min(minutes.count, from + windowMin);
    const attempt = (tried: number, drawnKgS: number): Seen => {
      const trial = clonePlant(plant);
      wantedKgS[window] = drawnKgS;
      run(trial, { span, unscaled, from, to, factor: tried });
      return { panC: bodyOf(trial, span, 'pan'), bottomC: bodyOf(trial, span, 'bottom') };
    };
    const seen = seenAt(span, to - 1, options.panOffsetK);
    factor = correctFactor({ span, sky, from, to, factor, factorStep: options.factorStep, seen, attempt });
    const drawnKgS = correctDraw({ span, factor, seen, attempt });
    factors[window] = factor;
    wantedKgS[window] = drawnKgS;
    run(plant, { span, unscaled, from, to, factor, account, residuals });
    nudgeStore(plant, span, to - 1);
  }
  const homeJ = account.homeJ + outsideJ(plant) - heldAtFirstJ;
  const conditions = conditionsOf(sky, (minute) => factors[Math.floor(minute / windowMin)] as number);
  return { factors, draws, begin, homeJ, residuals, conditions };
}

interface Stretch {
  readonly span: LoggedSpan;
  readonly unscaled: readonly Conditions[];
  readonly from: number;
  readonly to: number;
  readonly factor: number;
  readonly account?: Account;
  readonly residuals?: Residuals;
}

function run(plant: PlantState, { span, unscaled, from, to, factor, account, residuals }: Stretch): void {
  for (let minute = from; minute < to; minute++) {
    const weather = brighter(unscaled[minute] as Conditions, factor);
    for (const { dtS, outputs } of span.minutes.drives[minute] ?? [])
      advance(plant, outputs, weather, dtS, undefined, account);
    residuals?.note(minute, plant);
  }
}

function brighter(conditions: Conditions, factor: number): Conditions {
  if (factor === 1 || conditions.irradianceWM2 === 0) return conditions;
  const { beamWM2, diffuseWM2, irradianceWM2 } = conditions;
  return {
    ...conditions,
    beamWM2: beamWM2 * factor,
    diffuseWM2: diffuseWM2 * factor,
    irradianceWM2: irradianceWM2 * factor,
  };
}

/** The pan's thermometer that tells most: the sheet's, else the outlet's. */
export function panChannel({ minutes }: LoggedSpan): Channel | undefined {
  const { values } = minutes;
  return values.panSheetC !== undefined
    ? 'panSheetC'
    : values.panOutletC !== undefined
      ? 'panOutletC'
      : undefined;
}

function bodyOf(plant: PlantState, span: LoggedSpan, place: 'pan' | 'bottom'): number {
  const channel = place === 'bottom' ? 'storeBottomC' : panChannel(span);
  return channel === undefined ? Number.NaN : (plant.sensors.bodyValue[numberOf[channel]] ?? Number.NaN);
}

function seenAt(span: LoggedSpan, minute: number, panOffsetK: number): Seen {
  const { values } = span.minutes;
  const channel = panChannel(span);
  return {
    panC: (channel === undefined ? Number.NaN : (values[channel]?.[minute] ?? Number.NaN)) - panOffsetK,
    bottomC: values.storeBottomC?.[minute] ?? Number.NaN,
  };
}
