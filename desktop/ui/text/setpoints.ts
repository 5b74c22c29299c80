import { cautions } from '../../../shared-types/cautions.ts';
import type { SettingGroup } from '../../../shared-types/settings.ts';

const counted = (count: number, one: string, many: string) => (count === 1 ? `1 ${one}` : `${count} ${many}`);
const setpoints = (count: number) => counted(count, 'setpoint', 'setpoints');

/** Purposes by which setpoints are grouped. */
export const settingGroupTitles: Readonly<Record<SettingGroup, string>> = {
  harvest: 'Bringing heat home',
  filling: 'Filling the pan',
  emptying: 'Emptying the pan',
  frost: 'Frost',
  heat: 'Too much heat',
  pump: 'Pump',
  metering: 'Readings and heat meter',
};

/** Cautions that stand where the danger is. */
export const groupCautions: Readonly<Partial<Record<SettingGroup, string>>> = {
  frost: cautions.frost.text,
  heat: cautions.scald.text,
};

export const setpointText = {
  title: 'Setpoints',
  lead: 'What may be changed, and what it means. Protections hold whatever is set here.',
  inForce: (revision: number) => `Settings ${revision} in force.`,
  nothing: 'The controller has not told its settings yet.',
  search: 'Search names and sentences',
  show: 'Show',
  shown: { all: 'All', edited: 'My changes', set: 'Not at default' },
  found: (count: number) => `${setpoints(count)} shown`,
  none: 'No setpoint matches.',
  caution: 'Caution:',
  range: (least: string, most: string) => `${least} to ${most}`,
  defaultIs: (value: string) => `default ${value}`,
  now: (value: string) => `In force: ${value}`,
  toDefault: (title: string) => `${title}: back to default`,
  toDefaultShort: 'Back to default',
  keepAsIs: (title: string) => `${title}: leave as it is`,
  keepAsIsShort: 'Leave as it is',
  // The sentences of the table speak of 1 and 0.
  on: 'On (1)',
  off: 'Off (0)',
  notNumber: 'Write a number.',
  outOfRange: (least: string, most: string) => `Allowed from ${least} to ${most}.`,
  changes: {
    heading: 'Your changes',
    none: 'Nothing is changed. Edit a value to see here what would change.',
    summary: (count: number) => `${setpoints(count)} would change:`,
    line: (title: string, from: string, to: string) => `${title}: ${from} → ${to}`,
    from: 'now',
    to: 'then',
    faults: (count: number) => `${counted(count, 'reason', 'reasons')} why this cannot be applied:`,
    fault: (title: string, reason: string) => `${title}: ${reason}`,
    remarks: 'Allowed, and worth knowing:',
    apply: (count: number) => `Apply ${setpoints(count)} …`,
    discard: 'Drop my changes',
    lookOnly: 'You are signed in to look only: the values can be read here and not changed.',
    notListening: 'Nothing can be applied now: no controller is listening. Your changes stay on this page.',
    review: (count: number) => `Review ${counted(count, 'change', 'changes')}`,
  },
  dialog: {
    title: (count: number) => `Apply ${setpoints(count)}?`,
    consequence:
      'The controller checks all of them together, takes them from its next step on, and writes it into its log.',
    confirm: 'Yes, apply them',
    cancel: 'Leave it as it is',
  },
  outcome: {
    asking: 'Waiting for the controller to answer …',
    accepted: (text: string) => `Accepted. ${text} Waiting until the controller tells these settings …`,
    confirmed: (text: string, revision: number) => `In force as settings ${revision}. ${text}`,
    overtaken: (text: string, revision: number) =>
      `Accepted. ${text} Other values are in force since, as settings ${revision}.`,
    refused: (text: string) => `Refused, nothing was changed. ${text}`,
    unanswered: (text: string, tip: string) => `No answer. ${text} ${tip}`.trim(),
  },
  elsewhere: {
    heading: 'Changed elsewhere meanwhile',
    lead: 'Since you began to edit, somebody else has changed setpoints:',
    mine: (value: string) => `yours: ${value}`,
    keep: 'Keep mine',
    take: 'Take theirs',
    tip: 'Keeping yours changes nothing yet: it is applied like any change. Taking theirs drops your values of these setpoints.',
  },
  whatIf: {
    heading: 'What a logged day would have been',
    honest:
      'Tells where decisions would have differed, not the heat: from the first difference on the loop itself would have gone another way, so the counts are a hint.',
    day: 'Day',
    run: 'Decide this day again',
    needsChange: 'Change a value first.',
    needsValid: 'First mend what cannot be applied.',
    noDays: 'No day is logged yet.',
    same: 'Every output the same, all day.',
    alike: (time: string) => `Both decide alike until ${time}.`,
    differs: (count: string, steps: string) => `Outputs differ at ${count} of ${steps} steps.`,
    parting: 'Where they part',
    counts: 'Over the day',
    hint: 'Over the day, on readings of a loop that went the other way: a hint only',
    what: 'What',
    base: 'As set then',
    other: 'With your changes',
    phase: 'Phase',
    pump: 'Pump',
    drain: 'Drain',
    reason: 'Reason',
    starts: 'Pump starts',
    fills: 'Fills',
    pumpRun: 'Pump told to run',
    compared: 'Compared with the settings of that day:',
    equal: 'Your settings are those of that day.',
    old: 'This is the answer for other values than those now in the form.',
    open: 'open',
    closed: 'closed',
  },
  history: {
    heading: 'Changes so far',
    none: 'No change of settings is in the log.',
    byWhom: (who: string) => `by ${who}`,
    unknown: 'unknown',
    revision: (revision: number) => `settings ${revision}`,
    undo: 'Undo …',
    undoOf: (when: string) => `Undo the change of ${when}: puts the values before it into the form`,
    undone: 'These values are in force already.',
    noBefore: 'The values before were not kept.',
    ready: 'The values from before that change are in the form now. Nothing is applied yet.',
  },
} as const;
