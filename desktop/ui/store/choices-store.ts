import { z } from 'zod';
import { create } from 'zustand';
import { persist } from 'zustand/middleware';
import { heatUnits, temperatureUnits, type Units } from '../format/units.ts';

/** Ways to look at all logged days. */
export const daysViews = ['year', 'calendar', 'list'] as const;

const choicesSchema = z.object({
  temperature: z.enum(temperatureUnits).catch('C'),
  heat: z.enum(heatUnits).catch('kWh'),
  alarmSound: z.boolean().catch(false),
  /** Null until somebody chose. */
  daysView: z.enum(daysViews).nullable().catch(null),
  flowMoves: z.boolean().catch(true),
  /** Curves that were switched off by hand, by their names. */
  hiddenSeries: z.array(z.string()).catch([]),
  shownSeries: z.array(z.string()).catch([]),
});
/** What a person chose on this machine; kept by the browser. */
export type Choices = z.infer<typeof choicesSchema>;

export const defaultChoices: Choices = choicesSchema.parse({});

export const useChoices = create<Choices>()(
  persist(() => defaultChoices, {
    name: 'flatwater-choices',
    // What lies in the browser may be of another version, or anybody's.
    merge: (kept, current) => ({ ...current, ...choicesSchema.safeParse(kept).data }),
  }),
);

export const choose = (change: Partial<Choices>): void => {
  useChoices.setState(change);
};

export const selectTemperatureUnit = (state: Choices): Units['temperature'] => state.temperature;
export const selectAlarmSound = (state: Choices): boolean => state.alarmSound;
export const selectHeatUnit = (state: Choices): Units['heat'] => state.heat;
export const selectFlowMoves = (state: Choices): boolean => state.flowMoves;
export const selectHiddenSeries = (state: Choices): readonly string[] => state.hiddenSeries;
export const selectShownSeries = (state: Choices): readonly string[] => state.shownSeries;
export const selectDaysView = (state: Choices): Choices['daysView'] => state.daysView;

/** How days are looked at: as chosen; else by the year, and by the month where a year is too much for the screen. */
export const daysViewOf = (chosen: Choices['daysView'], narrow: boolean): (typeof daysViews)[number] =>
  chosen ?? (narrow ? 'calendar' : 'year');
