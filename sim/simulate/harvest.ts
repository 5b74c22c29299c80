import type { Totals } from '../../shared-types/engine.ts';
import type { LoopStep } from '../loop.ts';
import type { Account } from '../plant/account.ts';
import { createExtremes, type Extremes } from './extremes.ts';

/** What a month, or the whole span, brought. Heat and electricity in kWh. */
export interface Harvest extends Readonly<Extremes> {
  /** Local month such as 2031-06; `all` for the whole span. */
  readonly month: string;
  readonly days: number;
  readonly sunKWhM2: number;
  /** Heat that really came home, what the engine metered of it, and what was drawn above the cold water. */
  readonly homeKWh: number;
  readonly meteredKWh: number;
  readonly drawnKWh: number;
  readonly electricityKWh: number;
  readonly pumpH: number;
  readonly starts: number;
  readonly fills: number;
  /** Alarms announced. */
  readonly alarms: number;
}

/** A harvest while it is counted. */
export interface Count {
  readonly month: string;
  readonly atFirst: Account;
  readonly totalAtFirst: Totals;
  readonly fromMs: number;
  readonly extremes: Extremes;
  sunJM2: number;
  alarms: number;
}

export function beginCount(month: string, account: Account, { input, decision }: LoopStep): Count {
  return {
    month,
    atFirst: { ...account },
    totalAtFirst: decision.meter.total,
    fromMs: input.nowMs,
    extremes: createExtremes(),
    sunJM2: 0,
    alarms: 0,
  };
}

const kWh = (joules: number) => joules / 3.6e6;

export function endCount(count: Count, account: Account, { input, decision }: LoopStep): Harvest {
  const { atFirst, totalAtFirst } = count;
  const { total } = decision.meter;
  const since = (key: keyof Totals) => total[key] - totalAtFirst[key];
  const booked = (key: keyof Account) => account[key] - atFirst[key];
  return {
    month: count.month,
    days: (input.nowMs - count.fromMs) / 86_400_000,
    sunKWhM2: kWh(count.sunJM2),
    homeKWh: kWh(booked('homeJ')),
    meteredKWh: kWh(since('heatHomeJ') - since('heatLostJ')),
    drawnKWh: kWh(booked('drawnJ') - booked('madeUpJ')),
    electricityKWh: kWh(booked('electricityJ')),
    pumpH: since('pumpRunS') / 3600,
    starts: since('starts'),
    fills: since('fills'),
    alarms: count.alarms,
    ...count.extremes,
  };
}
