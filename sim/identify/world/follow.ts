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
import { correctDraw, correctSky, nothingUnknown, type Seen, type Steps, type Unknowns } from './correct.ts';
import { minuteMs } from './minutes.ts';
import { panChannel } from './pan-channel.ts';
import { createResiduals, type Residuals } from './residuals.ts';
import { conditionsOf, type SkyColumns } from './sky-columns.ts';
import type { LoggedSpan } from './span.ts';
import { type Nudge, nudge, nudgeOf } from './store-sensors.ts';

/** Sun and draws are held for so many minutes each; a design choice: shorter ones follow the noise. */
export const windowMin = 10;

/** What a plant that was driven as the logged loop says of that loop's world. */
export interface Followed {
  /** How unlikely the pan's temperatures are by all that was assumed: twice the negative logarithm. */
  readonly unlikely: number;
  readonly draws: DrawCourse;
  /** What the store was brought by at the end of each stretch of draws. */
  readonly nudges: readonly (Nudge | undefined)[];
  /** The loop as it stood when the day began. */
  readonly begin: PlantState;
  /** Heat that the followed loop brought home on the day [J]. */
  readonly homeJ: number;
  readonly residuals: Residuals;
  /** The sky as it was corrected. */
  readonly conditions: readonly Conditions[];
}

export interface FollowOptions {
  readonly traits: Partial<Traits>;
  readonly steps: Steps;
  /** What the pan's thermometer shows more than the store bottom's when both are alike [K]. */
  readonly panOffsetK: number;
}

/**
 * Drives a plant through a logged span and corrects sun and draws so that it goes where the log went. The day begins
 * with a window; what the first one of the span lacks is cut off before it.
 */
export function follow(span: LoggedSpan, sky: SkyColumns, options: FollowOptions): Followed {
  const { minutes, dayFromMs } = span;
  const dayMinute = (dayFromMs - minutes.fromMs) / minuteMs;
  const dayWindow = Math.ceil(dayMinute / windowMin);
  const cutMin = dayWindow * windowMin - dayMinute;
  const windows = Math.ceil((minutes.count + cutMin) / windowMin);
  const windowUnknowns: Unknowns[] = [];
  const wantedKgS = Array.from({ length: windows }, () => 0);
  const draws = { fromMs: minutes.fromMs - cutMin * minuteMs, stepMs: windowMin * minuteMs, wantedKgS };
  const nudges: (Nudge | undefined)[] = [];
  const uncorrected = conditionsOf(sky);
  const panThermometer = panChannel(span);
  const residuals = createResiduals(span);
  const plant = beginOf(span, options.traits, draws);
  let begin = clonePlant(plant);
  let heldAtFirstJ = outsideJ(plant);
  let account = emptyAccount();
  let unknowns = nothingUnknown;
  let unlikely = 0;

  for (let window = 0; window < windows; window++) {
    const from = Math.max(0, window * windowMin - cutMin);
    const to = Math.min(minutes.count, (window + 1) * windowMin - cutMin);
    if (window === dayWindow) {
      begin = clonePlant(plant);
      heldAtFirstJ = outsideJ(plant);
      account = emptyAccount();
    }
    const attempt = (tried: Unknowns, drawnKgS: number): Seen => {
      const trial = clonePlant(plant);
      wantedKgS[window] = drawnKgS;
      run(trial, { span, uncorrected, from, to, unknowns: tried });
      return { panC: bodyOf(trial, panThermometer), bottomC: bodyOf(trial, 'storeBottomC') };
    };
    const seen = {
      panC: shownAt(span, to - 1, panThermometer) - options.panOffsetK,
      bottomC: shownAt(span, to - 1, 'storeBottomC'),
    };
    const sun = correctSky({ span, sky, from, to, unknowns, steps: options.steps, seen, attempt });
    ({ unknowns } = sun);
    unlikely += sun.unlikely;
    const drawnKgS = correctDraw({ span, unknowns, seen, attempt });
    windowUnknowns.push(unknowns);
    wantedKgS[window] = drawnKgS;
    run(plant, { span, uncorrected, from, to, unknowns, account, residuals });
    const byK = nudgeOf(plant, span, to - 1);
    if (byK !== undefined) nudge(plant, byK);
    nudges.push(byK);
  }
  const homeJ = account.homeJ + outsideJ(plant) - heldAtFirstJ;
  const windowOf = (minute: number) => Math.floor((minute + cutMin) / windowMin);
  const conditions = uncorrected.map((minute, i) =>
    otherwise(minute, windowUnknowns[windowOf(i)] ?? unknowns),
  );
  return { unlikely, draws, nudges, begin, homeJ, residuals, conditions };
}

interface Stretch {
  readonly span: LoggedSpan;
  readonly uncorrected: readonly Conditions[];
  readonly from: number;
  readonly to: number;
  readonly unknowns: Unknowns;
  readonly account?: Account;
  readonly residuals?: Residuals;
}

function run(
  plant: PlantState,
  { span, uncorrected, from, to, unknowns, account, residuals }: Stretch,
): void {
  for (let minute = from; minute < to; minute++) {
    const weather = otherwise(uncorrected[minute] as Conditions, unknowns);
    for (const { dtS, outputs } of span.minutes.drives[minute] ?? [])
      advance(plant, outputs, weather, dtS, undefined, account);
    residuals?.note(minute, plant);
  }
}

/** By so much the long-wave light from above rises with the air [W/m2K]; about 4 sigma T^3. */
const longWaveByAirWM2K = 5;

function otherwise(conditions: Conditions, { factor, airK }: Unknowns): Conditions {
  if (airK === 0 && (factor === 1 || conditions.irradianceWM2 === 0)) return conditions;
  const { beamWM2, diffuseWM2, irradianceWM2, airC, longWaveWM2 } = conditions;
  return {
    ...conditions,
    beamWM2: beamWM2 * factor,
    diffuseWM2: diffuseWM2 * factor,
    irradianceWM2: irradianceWM2 * factor,
    airC: airC + airK,
    longWaveWM2: longWaveWM2 + longWaveByAirWM2K * airK,
  };
}

function bodyOf(plant: PlantState, channel: Channel | undefined): number {
  return channel === undefined ? Number.NaN : (plant.sensors.bodyValue[numberOf[channel]] ?? Number.NaN);
}

/** What a channel showed in a minute; not a number where it was not read. */
function shownAt({ minutes }: LoggedSpan, minute: number, channel: Channel | undefined): number {
  return channel === undefined ? Number.NaN : (minutes.values[channel]?.[minute] ?? Number.NaN);
}
