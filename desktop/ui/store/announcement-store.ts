import { create } from 'zustand';

/** What a screen reader is told at once, without being asked: new alarms. */
interface Announcements {
  readonly alert: string;
}

export const useAnnouncements = create<Announcements>(() => ({ alert: '' }));

export const selectAlert = (state: Announcements): string => state.alert;
