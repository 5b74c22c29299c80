import { createWeather } from '../../../../sim/weather/weather.ts';

/** An invented place, an hour and a half west of its clock's meridian at most. */
export const location = { latitudeDeg: 44, longitudeDeg: -28, elevationM: 20 };
const zoneH = -2;
const hourMs = 3_600_000;

export interface Hour {
  month: number;
  day: number;
  hour: number;
  /** End of the hour [UTC ms]. */
  readonly endMs: number;
  airC: number;
  dewC: number;
  humidityPercent: number;
  globalWM2: number;
  diffuseWM2: number;
  windMs: number;
  rainMm: number;
}

/** The hours of 2031 at the place: means of light, the rest at the end of the hour, printed figures. */
export function sampleHours(): Hour[] {
  const weather = createWeather({ location, seed: 6 });
  const startMs = Date.UTC(2031, 0, 1) - zoneH * hourMs;
  return Array.from({ length: 8760 }, (_, i) => {
    const fromMs = startMs + i * hourMs;
    const within = Array.from({ length: 12 }, (_, k) => weather.at(fromMs + (k + 0.5) * 300_000));
    const mean = (key: 'irradianceWM2' | 'diffuseWM2' | 'rainMmH') =>
      within.reduce((sum, now) => sum + now[key] / 12, 0);
    const end = weather.at(fromMs + hourMs);
    const clock = new Date(Date.UTC(2031, 0, 1) + i * hourMs);
    return {
      month: clock.getUTCMonth() + 1,
      day: clock.getUTCDate(),
      hour: clock.getUTCHours() + 1,
      endMs: fromMs + hourMs,
      airC: Number(end.airC.toFixed(1)),
      dewC: Number((end.airC - (100 - 100 * end.humidityFraction) / 5).toFixed(1)),
      humidityPercent: Math.round(100 * end.humidityFraction),
      globalWM2: Math.round(mean('irradianceWM2')),
      diffuseWM2: Math.round(mean('diffuseWM2')),
      windMs: Number(end.windMs.toFixed(1)),
      rainMm: Number(mean('rainMmH').toFixed(1)),
    };
  });
}

export const epwHeader = [
  `LOCATION,Quillhaven,-,-,invented,000000,${location.latitudeDeg},${location.longitudeDeg},${zoneH}.0,20.0`,
  'DESIGN CONDITIONS,0',
  'TYPICAL/EXTREME PERIODS,0',
  'GROUND TEMPERATURES,0',
  'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
  'COMMENTS 1,invented',
  'COMMENTS 2,',
  'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
];

/** One row of 35 columns. */
export function epwRow(hour: Hour): string {
  const { month, day, airC, dewC, humidityPercent, globalWM2, diffuseWM2, windMs, rainMm } = hour;
  const time = [2031, month, day, hour.hour, 60, '?9?9'];
  const air = [airC, dewC, humidityPercent, 101300, 9999, 9999, 9999];
  const light = [globalWM2, 9999, diffuseWM2, 999999, 999999, 999999, 9999];
  const rest = [0, windMs, 5, 5, 9999, 99999, 9, '999999999', 999, '.999', 999, 99, 999, rainMm, 1];
  return [...time, ...air, ...light, ...rest].join(',');
}

export function epwText(hours: readonly Hour[], header: readonly string[] = epwHeader): string {
  return `${[...header, ...hours.map(epwRow)].join('\r\n')}\r\n`;
}
