import { alarmsOf, titleOf } from '../store/live-selectors.ts';
import type { LiveState } from '../store/live-store.ts';
import { standing } from '../store/new-alarms.ts';
import { own } from '../store/own.ts';
import { en } from '../text/en.ts';

/**
 * What the choice of sites calls each of them: its title, its name beside it where another has the same
 * title, and whether it needs somebody or was not heard of.
 */
export function siteLabels(state: LiveState, names: readonly string[]): readonly string[] {
  const titles = names.map((name) => titleOf(state, name));
  return names.map((name, index) => {
    const title = titles[index] ?? name;
    const alike = titles.filter((other) => other === title).length > 1;
    const called = alike ? en.shell.sites.named(title, name) : title;
    if (own(state.sites, name) === undefined) return en.shell.sites.unheard(called);
    const alarms = standing(alarmsOf(state, name)).length;
    return alarms === 0 ? called : en.shell.sites.withAlarms(called, en.shell.alarmCount(alarms));
  });
}
