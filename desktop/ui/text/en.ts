import { alarmsText } from './alarms.ts';
import { commissioningText } from './commissioning.ts';
import { chartText, daysText, eventTitles } from './days.ts';
import { desktopText } from './desktop.ts';
import { foreignText } from './foreign.ts';
import { jobText } from './jobs.ts';
import { learntTitles } from './learnt.ts';
import { liveText } from './live.ts';
import { panCheckText } from './pan-check.ts';
import { phaseMeanings, phaseTitles, reasonTitles } from './phases.ts';
import { alarmStateTitles, causeTitles, priorityTitles } from './readings.ts';
import { replayText } from './replay.ts';
import { requestText } from './requests.ts';
import { withoutSensor } from './sensors.ts';
import { groupCautions, setpointText, settingGroupTitles } from './setpoints.ts';
import { bannerText, shellText } from './shell.ts';
import { signInText } from './sign-in.ts';
import { siteText } from './site.ts';
import { tuningText } from './tuning.ts';

/**
 * Every English word of the screens, by subject; no component holds text of its own.
 * The engine's sentences come with the data; channels and alarms bring their titles in shared-types.
 */
export const en = {
  shell: shellText,
  signIn: signInText,
  banners: bannerText,
  live: liveText,
  requests: requestText,
  desktop: desktopText,
  alarms: alarmsText,
  site: siteText,
  withoutSensor,
  learnt: learntTitles,
  commissioning: commissioningText,
  days: daysText,
  foreign: foreignText,
  jobs: jobText,
  charts: chartText,
  replay: replayText,
  tuning: tuningText,
  panCheck: panCheckText,
  setpoints: setpointText,
  settingGroups: settingGroupTitles,
  groupCautions,
  events: eventTitles,
  phases: phaseTitles,
  phaseMeanings,
  reasons: reasonTitles,
  causes: causeTitles,
  priorities: priorityTitles,
  alarmStates: alarmStateTitles,
} as const;
