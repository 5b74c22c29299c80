import { blackBodyWM2 } from '../../../../controller/engine/sky.ts';
import { streamHeatW } from '../../../../controller/engine/water.ts';
import type { RawReadings } from '../../../../shared-types/readings.ts';
import { defaultSettings } from '../../../../shared-types/settings.ts';
import type { Site } from '../../../../shared-types/site.ts';
import { logRecord } from '../../../support/log-records.ts';
import { memoryLog } from '../../../support/memory-log.ts';
import { demoContent, siteOf } from '../../../support/sites.ts';

/** A loop whose days are UTC. */
export const site = siteOf(
  demoContent({
    timeZone: 'Etc/UTC',
    location: { latitudeDeg: 40, longitudeDeg: 0, elevationM: 0 },
    sensors: Object.fromEntries(
      Object.entries({
        panOutletC: 'C',
        panInletC: 'C',
        panSheetC: 'C',
        storeBottomC: 'C',
        ambientC: 'C',
        irradianceWM2: 'W/m2',
        windMs: 'm/s',
        longWaveWM2: 'W/m2',
        flowLMin: 'L/min',
      }).map(([channel, unit]) => [channel, { topic: 'invented', pointer: `/${channel}`, unit }]),
    ),
  }),
);

/** A pan on one day, by the steady form: no wind, a sky as warm as the air. */
export interface PanOfDay {
  readonly efficiency: number;
  readonly lossWM2K: number;
  /** Sheet over the mean water for each watt a square metre [K m2/W]. */
  readonly contactKM2W: number;
  /** Share of the light that comes to the sheet at an hour. */
  readonly lightFraction: (hour: number) => number;
  /** Share of the sun that the clouds of the day let through. */
  readonly clearFraction: number;
}

export const goodPan: PanOfDay = {
  efficiency: 0.9,
  lossWM2K: 11,
  contactKM2W: 0.006,
  lightFraction: () => 1,
  clearFraction: 1,
};

const flowLMin = 24;
const minuteMs = 60_000;
const firstMs = Date.parse('2031-06-01T00:00:00Z');
const airC = 20;

/** Sun of a minute of a day [W/m2]; days differ, so that gain and loss can be told apart. */
const sunWM2 = (day: number, minute: number) =>
  Math.max(0, (600 + 60 * (day % 5)) * Math.sin((Math.PI * (minute - 300)) / 840));
/** Water that enters the pan [°C]: warmer through the day and from day to day. */
const inC = (day: number, minute: number) => 20 + 2 * (day % 4) + (minute - 480) / 60;

/** What the loop did in a minute; null: nothing was logged. */
export interface MinuteDone {
  readonly readings: RawReadings;
  readonly circulates: boolean;
  /** Of a pump that runs; 1 when absent. */
  readonly pumpFraction?: number;
}

/** A minute of a pan: it circulates from 8 to 16 h. */
export function panMinute(pan: PanOfDay, day: number, minute: number): MinuteDone {
  const cold = inC(day, minute);
  const risesKS = (warmedK(pan, day, minute + 1, 0) - warmedK(pan, day, minute - 1, 0)) / 120;
  const storedWM2 = storedJM2K(cold) * (1 / 3600 + risesKS / 2);
  const warmed = warmedK(pan, day, minute, storedWM2);
  const gaveWM2 = streamWM2K(cold) * warmed + storedWM2;
  const values = {
    panInletC: cold,
    panOutletC: cold + warmed,
    panSheetC: cold + warmed / 2 + pan.contactKM2W * gaveWM2,
    storeBottomC: cold,
    ambientC: airC,
    irradianceWM2: pan.clearFraction * sunWM2(day, minute),
    windMs: 0,
    longWaveWM2: blackBodyWM2(airC),
    flowLMin,
  };
  const readings = Object.fromEntries(
    Object.entries(values).map(([channel, value]) => [channel, { value, ageMs: 0 }]),
  );
  return { readings, circulates: minute >= 480 && minute < 960 };
}

/** By how much the water is warmed on its way, so that what is gathered is carried away, lost and stored [K]. */
function warmedK(pan: PanOfDay, day: number, minute: number, storedWM2: number): number {
  const cold = inC(day, minute);
  const light = pan.efficiency * pan.lightFraction(minute / 60) * pan.clearFraction * sunWM2(day, minute);
  return (light - pan.lossWM2K * (cold - airC) - storedWM2) / (streamWM2K(cold) + pan.lossWM2K / 2);
}

/** Heat of the stream for each kelvin [W/m2K]; straight enough over some kelvins. */
const streamWM2K = (waterC: number) =>
  streamHeatW(flowLMin, waterC + 1, waterC, waterC) / site.pan.grossAreaM2;

/** Heat that warms each square metre by one kelvin [J/m2K], as water and sheet of the site. */
function storedJM2K(waterC: number): number {
  const { wettedAreaM2, waterDepthM, grossAreaM2 } = site.pan;
  const waterJK = streamHeatW(60_000, waterC + 1, waterC, waterC) * wettedAreaM2 * waterDepthM;
  return waterJK / grossAreaM2 + 4000;
}

/** A log of so many days, minute by minute. */
export function panLog(
  days: number,
  minuteOf: (day: number, minute: number) => MinuteDone | null,
  own: Site = site,
) {
  const records = [];
  for (let day = 0; day < days; day++)
    for (let minute = 0; minute < 1440; minute++) {
      const done = minuteOf(day, minute);
      if (done === null) continue;
      const nowMs = firstMs + (day * 1440 + minute + 1) * minuteMs;
      const pumpFraction = done.circulates ? (done.pumpFraction ?? 1) : 0;
      records.push(
        logRecord(records.length + 1, {
          input: {
            nowMs,
            elapsedMs: minuteMs,
            localDay: new Date(nowMs - 1).toISOString().slice(0, 10),
            readings: done.readings,
            feedback: null,
          },
          outcome: {
            phase: done.circulates ? 'circulating' : 'empty',
            outputs: {
              pumpFraction,
              drainOpen: !done.circulates,
              drainPumpOn: false,
              exchangerPumpOn: false,
            },
          },
        }),
      );
    }
  return memoryLog(records, [], own, defaultSettings);
}

export const dayName = (day: number) => new Date(firstMs + day * 86_400_000).toISOString().slice(0, 10);
