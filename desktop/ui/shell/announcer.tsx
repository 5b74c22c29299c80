import { selectAlert, useAnnouncements } from '../store/announcement-store.ts';

/** Speaks new alarms to a screen reader; the region stands there before it has anything to say. */
export function Announcer() {
  const alert = useAnnouncements(selectAlert);
  return (
    <div role="alert" className="visually-hidden">
      {alert}
    </div>
  );
}
