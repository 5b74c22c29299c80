import type { MonitorReply } from '../../shared-types/monitor-api.ts';
import type { Settings } from '../../shared-types/settings.ts';
import { remarksOn } from '../../sim/replay/settings-remarks.ts';
import type { Live } from './live.ts';
import { refusal } from './replies.ts';

/** Answers from the site as its controller tells it; without a controller nothing can be said. */
export function settingsRemarksFor(
  live: Pick<Live, 'site'>,
  name: string,
  settings: Settings,
): MonitorReply<'settingsRemarks'> {
  const told = live.site(name);
  if (!told?.site) return refusal('note', `No controller of ${name} was heard.`);
  const learnt = told.snapshot?.decision.learnt ?? {};
  return { ok: true, result: remarksOn({ ...told.site, learnt }, settings) };
}
