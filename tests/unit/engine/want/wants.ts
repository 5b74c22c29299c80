import { expect } from 'vitest';
import type { Goal, Situation } from '../../../../controller/engine/situation.ts';
import { initialState, noTimers, type Phase, type Timers } from '../../../../controller/engine/state.ts';
import { want } from '../../../../controller/engine/want/want.ts';
import type { ReasonCode } from '../../../../shared-types/reasons.ts';
import { type Given, nowMs, situationOf } from '../situations.ts';

export type Harvest = ReturnType<typeof initialState>['harvest'];

export interface Told extends Given {
  readonly phase?: Phase;
  readonly timers?: Partial<Timers>;
  readonly harvest?: Partial<Harvest>;
  readonly fills?: number;
}

export function given({ phase, timers = {}, harvest = {}, fills = 0, ...rest }: Told): Situation {
  const start = initialState();
  const { meter } = start;
  return situationOf({
    ...rest,
    state: {
      phase: phase ?? start.phase,
      timers: { ...noTimers, ...timers },
      harvest: { ...start.harvest, ...harvest },
      meter: {
        ...meter,
        total: { ...meter.total, fills: fills + 3 },
        dayStart: { ...meter.dayStart, fills: 3 },
      },
      ...rest.state,
    },
  });
}

export function wanted(told: Told): [Goal, ReasonCode] {
  const command = want(given(told));
  expect([command.urgent, command.by]).toEqual([false, 'want']);
  return [command.goal, command.cause.code];
}
export const valuesOf = (told: Told) => want(given(told)).cause.values;

export const resting: Phase = { name: 'resting', sinceMs: nowMs - 600_000 };
export const warm = { panSheetC: 40, panOutletC: 40, storeBottomC: 20 };
export const since = (ms: number) => nowMs - ms;
