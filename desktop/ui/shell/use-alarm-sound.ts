import { useEffect } from 'react';
import { useChoices } from '../store/choices-store.ts';
import { useLive } from '../store/live-store.ts';
import { createAlarmSound } from './alarm-sound.ts';
import { bringsAlarm } from './brings-alarm.ts';

export const alarmSound = createAlarmSound(
  () => new AudioContext(),
  () => performance.now(),
);

/** Sounds when a new alarm comes, where that was chosen. */
export function useAlarmSound(): void {
  useEffect(
    () =>
      useLive.subscribe((after, before) => {
        if (useChoices.getState().alarmSound && bringsAlarm(before, after)) alarmSound.play();
      }),
    [],
  );
}
