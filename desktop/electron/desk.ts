import type { MonitorEvent, SiteLive } from '../../shared-types/monitor-api.ts';
import { alarmNews, type News } from './alarm-news.ts';
import { trayText } from './tray-text.ts';

/** What the desk can do with what it knows. */
interface DeskOutlets {
  /** Called with the text each time that it changes. */
  readonly show: (text: string) => void;
  readonly notify: (news: News) => void;
}

/** Follows the loops for whoever does not look at the window: their state in a line, new alarms at once. */
export function createDesk({ show, notify }: DeskOutlets): (event: MonitorEvent) => void {
  const sites = new Map<string, SiteLive>();
  let host: Extract<MonitorEvent, { kind: 'host' }>['host'] | undefined;
  let shown = '';

  return (event) => {
    if (event.kind === 'host') host = event.host;
    else if (event.kind === 'gone') sites.delete(event.site);
    else {
      for (const news of alarmNews(sites.get(event.live.name), event.live)) notify(news);
      sites.set(event.live.name, event.live);
    }
    const text = trayText(
      host,
      [...sites.values()].sort((a, b) => a.name.localeCompare(b.name)),
    );
    if (text === shown) return;
    shown = text;
    show(text);
  };
}
