import { moreSkyWM2, type OwnSky } from '../possible-loop.ts';
import { minuteMs } from './minutes.ts';
import { passingCloudWM2 } from './passing-cloud.ts';
import type { SkyColumns } from './sky-columns.ts';

/** 1 with the sun overhead, 0 in the dark. */
const dayness = (zenithDeg: number) => Math.max(0, Math.cos((zenithDeg * Math.PI) / 180));

/**
 * The weather of a span under a loop's own sky: air and wind where nobody measured them, and long-wave light where it is
 * told by formula; what clouds do to that can be told where the sun is measured.
 */
export function withOwnSky(assumed: SkyColumns, own: OwnSky): SkyColumns {
  const { air, wind } = assumed.origins;
  const { zenithDeg } = assumed.sun;
  const airC =
    air === 'measured'
      ? assumed.airC
      : assumed.airC.map((value, i) => value + own.airK * dayness(zenithDeg[i] as number));
  const blown = Math.max(0, 1 + own.windShare);
  const windMs = wind === 'measured' ? assumed.windMs : assumed.windMs.map((value) => value * blown);
  const sky = { ...assumed, airC, windMs };
  if (sky.longWaveWM2 !== undefined) return sky;
  const clouds = sky.origins.irradiance === 'measured' ? passingCloudWM2(sky) : undefined;
  return {
    ...sky,
    moreSkyWM2: sky.airC.map(
      (_, i) => moreSkyWM2(own, sky.fromMs + i * minuteMs) + own.cloudShare * (clouds?.[i] ?? 0),
    ),
  };
}
