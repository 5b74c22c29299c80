import type { Channel } from '../../../shared-types/channels.ts';
import type { Origin } from '../../../shared-types/tuning.ts';
import type { Conditions } from '../../weather/conditions.ts';
import { erbsDiffuseFraction } from '../../weather/diffuse-fraction.ts';
import { clearSkyEmissivity, dewPointC, longWaveWM2, pressureHPa } from '../../weather/sky.ts';
import type { Weather } from '../../weather/weather.ts';
import { filled, smoothed } from './mending.ts';
import { minuteMs } from './minutes.ts';
import { isMeasured } from './read-fraction.ts';
import type { LoggedSpan } from './span.ts';
import { type SunColumn, sunColumn } from './sun-column.ts';

/** The weather of a span, minute by minute, before it is made into conditions. */
export interface SkyColumns {
  readonly fromMs: number;
  readonly sun: SunColumn;
  /** As measured, or a clear sky's where there is no sensor. */
  readonly irradianceWM2: Float64Array;
  readonly airC: Float64Array;
  readonly windMs: Float64Array;
  readonly humidityFraction: Float64Array;
  /** Long-wave light as measured; undefined: by formula. */
  readonly longWaveWM2: Float64Array | undefined;
  /** What a sky that is told by formula sends down more than that; nothing when absent [W/m2]. */
  readonly moreSkyWM2?: Float64Array;
  readonly pressureHPa: number;
  readonly origins: {
    readonly irradiance: Origin;
    readonly air: Origin;
    readonly wind: Origin;
    readonly sky: Origin;
  };
}

/** What is assumed of air that nobody measured: neither dry nor damp, neither still nor windy. Design choices. */
const assumedHumidityFraction = 0.7;
const assumedWindMs = 2;
/** Wind is felt over some minutes; the mean over five takes the sensor's noise out. A design choice. */
const windReach = 2;

/** What was read in less than half of the day counts as not measured: no straight line tells of the rest. */
export function skyColumns(span: LoggedSpan, assumedAirC: () => Float64Array): SkyColumns {
  const { site, minutes } = span;
  const { fromMs, count, values } = minutes;
  const sun = sunColumn(site, fromMs, count);
  const measured = (channel: Channel) => (isMeasured(channel, span) ? values[channel] : undefined);
  const irradiance = litOnly(clearnessFilled(measured('irradianceWM2'), sun), sun);
  const air = filled(measured('ambientC'));
  const wind = filled(measured('windMs'));
  const humidity = filled(measured('humidityFraction'));
  const longWave = filled(measured('longWaveWM2'));
  return {
    fromMs,
    sun,
    irradianceWM2: irradiance ?? sun.clearWM2,
    airC: air ?? assumedAirC(),
    windMs: wind === undefined ? new Float64Array(count).fill(assumedWindMs) : smoothed(wind, windReach),
    humidityFraction: humidity ?? new Float64Array(count).fill(assumedHumidityFraction),
    longWaveWM2: longWave,
    pressureHPa: pressureHPa(site.location.elevationM),
    origins: {
      irradiance: irradiance === undefined ? 'reconstructed' : 'measured',
      air: air === undefined ? 'reconstructed' : 'measured',
      wind: wind === undefined ? 'assumed' : 'measured',
      sky: longWave !== undefined ? 'measured' : humidity === undefined ? 'assumed' : 'reconstructed',
    },
  };
}

/** Holes are filled by how clear the sky was on both sides of them, not by how bright. */
function clearnessFilled(
  values: Float64Array | undefined,
  { spaceWM2 }: SunColumn,
): Float64Array | undefined {
  const clearness = values?.map((value, i) => {
    const space = spaceWM2[i] as number;
    return space < leastSpaceWM2 ? Number.NaN : value / space;
  });
  const whole = filled(clearness);
  if (whole === undefined || values === undefined) return undefined;
  return values.map((value, i) =>
    Number.isNaN(value) ? (whole[i] as number) * (spaceWM2[i] as number) : value,
  );
}

/** Below this outside the air, clearness says nothing [W/m2]. */
const leastSpaceWM2 = 50;
/** Deeper than this the sun leaves no light that counts [deg]. */
export const darkZenithDeg = 96;

/** A sensor shows a few watts by night either way: night is dark, and there is no negative sun. */
function litOnly(values: Float64Array | undefined, { zenithDeg }: SunColumn): Float64Array | undefined {
  return values?.map((value, i) => ((zenithDeg[i] as number) > darkZenithDeg ? 0 : Math.max(0, value)));
}

/** The conditions of every minute. */
export function conditionsOf(columns: SkyColumns): Conditions[] {
  const {
    fromMs,
    sun,
    airC,
    windMs,
    humidityFraction,
    irradianceWM2,
    longWaveWM2: measured,
    origins,
  } = columns;
  const cloud =
    origins.irradiance === 'measured'
      ? cloudFractions(irradianceWM2, sun)
      : irradianceWM2.map(() => assumedCloudFraction);
  const conditions: Conditions[] = [];
  for (let i = 0; i < airC.length; i++) {
    const light = irradianceWM2[i] as number;
    const space = sun.spaceWM2[i] as number;
    const diffuseWM2 = light * (space > light ? erbsDiffuseFraction(light / space) : 1);
    conditions.push({
      atMs: fromMs + (i + 1) * minuteMs,
      solarHour: sun.solarHour[i] as number,
      sunZenithDeg: sun.zenithDeg[i] as number,
      sunAzimuthDeg: sun.azimuthDeg[i] as number,
      beamWM2: light - diffuseWM2,
      diffuseWM2,
      irradianceWM2: light,
      airC: airC[i] as number,
      humidityFraction: humidityFraction[i] as number,
      windMs: windMs[i] as number,
      longWaveWM2: measured?.[i] ?? longWaveAt(columns, cloud, i),
      rainMmH: 0,
      snowMmH: 0,
    });
  }
  return conditions;
}

function longWaveAt(columns: SkyColumns, cloud: Float64Array, i: number): number {
  const { airC, humidityFraction, moreSkyWM2, sun, pressureHPa: pressure } = columns;
  const dewC = dewPointC(airC[i] as number, humidityFraction[i] as number);
  const emissivity = clearSkyEmissivity(dewC, sun.solarHour[i] as number, pressure);
  return longWaveWM2(airC[i] as number, emissivity, cloud[i] as number) + (moreSkyWM2?.[i] ?? 0);
}

/** Where no irradiance tells of cloud; a design choice. */
const assumedCloudFraction = 0.4;
/** Half a day on each side. */
const cloudReach = 720;

/**
 * Cloud by the clearness of the half day before and after: none at 0.7, closed at 0.2 and below. A design choice;
 * by night nothing better is known.
 */
function cloudFractions(irradianceWM2: Float64Array, { spaceWM2 }: SunColumn): Float64Array {
  const got = smoothed(irradianceWM2, cloudReach);
  const possible = smoothed(spaceWM2, cloudReach);
  return got.map((mean, i) => {
    const space = possible[i] as number;
    return space <= 0 ? 0.5 : Math.min(1, Math.max(0, (0.7 - mean / space) / 0.5));
  });
}

/** Weather out of conditions that each hold for the minute up to their instant; the nearest beyond both ends. */
export function weatherOf(conditions: readonly Conditions[]): Weather {
  const firstMs = (conditions[0] as Conditions).atMs;
  const last = conditions.length - 1;
  return {
    at: (atMs) => {
      const minute = Math.ceil((atMs - firstMs) / minuteMs);
      return conditions[Math.min(last, Math.max(0, minute))] as Conditions;
    },
  };
}
