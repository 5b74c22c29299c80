import { alarmCatalogue } from '../../shared-types/alarm-catalogue.ts';
import type { SiteLive } from '../../shared-types/monitor-api.ts';
import { newAlarms } from '../ui/store/new-alarms.ts';
import { en } from '../ui/text/en.ts';
import { titleOf } from './tray-text.ts';

/** What a notification says. */
export interface News {
  readonly title: string;
  readonly body: string;
}

/** More alarms than this at a time are told together. A design choice. */
const mostTold = 3;

/** What is new among a site's alarms, to be told at once. A site that is first heard of brings no news. */
export function alarmNews(before: SiteLive | undefined, after: SiteLive): readonly News[] {
  if (before === undefined) return [];
  const fresh = newAlarms(before.snapshot?.decision.alarms ?? [], after.snapshot?.decision.alarms ?? []);
  const site = titleOf(after);
  if (fresh.length > mostTold) {
    const titles = fresh.map(({ code }) => alarmCatalogue[code].title).join(', ');
    return [{ title: en.desktop.alarmsAt(fresh.length), body: en.desktop.alarmAt(site, `${titles}.`) }];
  }
  return fresh.map(({ code }) => {
    const { title, response } = alarmCatalogue[code];
    return { title, body: en.desktop.alarmAt(site, response) };
  });
}
