import type { Conditions } from '../../weather/conditions.ts';
import { assumedAirC } from '../world/assumed-air.ts';
import { minuteMs } from '../world/minutes.ts';
import { passingCloudWM2 } from '../world/passing-cloud.ts';
import { conditionsOf, type SkyColumns, skyColumns } from '../world/sky-columns.ts';
import type { LoggedSpan } from '../world/span.ts';

/** A logged day as a fit takes it: with some hours before it, in which the plant finds its way. */
export interface Stretch {
  readonly span: LoggedSpan;
  /** Of the span's minutes the first that is compared. */
  readonly comparedFrom: number;
  readonly origins: SkyColumns['origins'];
  /** False: the pan is told by its thermometer as long as there is light, and only the dark is compared. */
  readonly sunMeasured: boolean;
  readonly conditions: readonly Conditions[];
  /** What clouds that come and go may add to the long-wave light, minute by minute. */
  readonly passingCloudWM2: Float64Array;
}

/** So long before the day the plant begins to run [min]: two time constants of a pan and more. A design choice. */
const warmUpMin = 240;

export function stretchOf(whole: LoggedSpan): Stretch {
  const span = cropped(whole, whole.dayFromMs - warmUpMin * minuteMs);
  // What clouds do is told by the hours before and after: the whole span is asked.
  const sky = skyColumns(whole, () => assumedAirC(whole));
  const cut = whole.minutes.count - span.minutes.count;
  const comparedFrom = Math.max(shortestWarmUpMin, (span.dayFromMs - span.minutes.fromMs) / minuteMs);
  const { origins } = sky;
  const sunMeasured = origins.irradiance === 'measured';
  return {
    span,
    comparedFrom,
    origins,
    sunMeasured,
    conditions: conditionsOf(sky).slice(cut),
    passingCloudWM2: passingCloudWM2(sky).subarray(cut),
  };
}

/** Deeper than this the sun gives nothing that counts in a comparison without a sensor of it [deg]. */
const comparedDarkZenithDeg = 94;

export function inTheDark({ conditions }: Stretch, minute: number): boolean {
  return (conditions[minute]?.sunZenithDeg ?? 0) > comparedDarkZenithDeg;
}

/** Where the log has nothing before the day, its own first minutes serve [min]. */
const shortestWarmUpMin = 60;

/** The same span without what lies before an instant. */
function cropped(span: LoggedSpan, fromMs: number): LoggedSpan {
  const { minutes, phases } = span;
  const cut = Math.floor((fromMs - minutes.fromMs) / minuteMs);
  if (cut <= 0) return span;
  const startMs = minutes.fromMs + cut * minuteMs;
  const values = Object.fromEntries(
    Object.entries(minutes.values).map(([channel, values]) => [channel, values.subarray(cut)]),
  );
  const begun = phases.findLast((phase) => phase.fromMs <= startMs);
  return {
    ...span,
    minutes: {
      fromMs: startMs,
      count: minutes.count - cut,
      values,
      drives: minutes.drives.slice(cut),
      steps: minutes.steps.subarray(cut),
    },
    phases: [...(begun === undefined ? [] : [begun]), ...phases.filter((phase) => phase.fromMs > startMs)],
  };
}
