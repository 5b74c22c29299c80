import type { PanFinding } from '../../../shared-types/pan-check.ts';

const counted = (count: number, one: string, many: string) => (count === 1 ? `1 ${one}` : `${count} ${many}`);
const days = (count: number) => counted(count, 'day', 'days');

const findings: Readonly<Record<PanFinding['code'], string>> = {
  'as-good': 'As good as it was',
  'gathers-less': 'Gathers less',
  'gathers-more': 'Gathers more',
  'loses-more': 'Loses more',
  'loses-less': 'Loses less',
  'contact-poorer': 'Sheet lies worse on the water',
  'contact-better': 'Sheet lies better on the water',
  shaded: 'Shaded at times',
  'not-sure': 'Not sure yet',
  'nothing-to-compare': 'Nothing to compare',
};

export const panCheckText = {
  title: 'Pan check',
  lead: 'Does the pan gather and lose as it did? Its heat is held, day by day, against what the pan of earlier days would have given under the same sky.',
  form: {
    heading: 'Which days',
    look: 'Days to look at',
    reference: 'Compare with',
    chooseBy: 'Compared with',
    oldest: 'The oldest of them',
    fromTo: 'Other days',
    firstDay: 'First day',
    lastDay: 'Last day',
    named: (days: string, end: string) => `${days}: ${end}`,
    chosen: (count: number, reference: number | null) =>
      reference === null
        ? `${days(count)}, compared with the oldest of them.`
        : `${days(count)}, compared with ${days(reference)}.`,
    faults: {
      unchosen: 'Choose a first and a last day.',
      none: 'No day that is over is kept there.',
      order: 'The first day lies after the last.',
      many: (most: number) => `At most ${days(most)} can be looked at.`,
      noReference: 'No day that is over is kept there to compare with.',
    },
    run: 'Look',
    old: 'This is the answer for other days than those chosen now.',
  },
  span: (from: string, to: string) => `${from} to ${to}`,
  found: {
    heading: (span: string) => `What the newest days tell: ${span}`,
    titles: findings,
    list: 'Findings',
    rests: (reference: string, count: number, hours: string) =>
      `Held against ${reference}: ${days(count)} of use with ${hours} of steady flow.`,
    usable: (usable: number, asked: number, hours: string) =>
      `Of ${days(asked)} looked at, ${usable === asked ? 'all' : String(usable)} could be used, with ${hours} of steady flow through a full pan.`,
  },
  byDay: {
    heading: 'Heat against the reference, day by day',
    chart: (count: number, span: string, first: string, last: string) =>
      `Heat against the reference on ${days(count)}, ${span}. In the first group ${first}, in the newest ${last}. The tables below hold the same.`,
    mark: (day: string, ratio: string, band: string) => `${day}: ${ratio} (${band})`,
    legend: {
      day: 'a day, with the band it lies in with 95 %',
      reference: 'a day of the reference',
      group: 'a group of days, with its band',
      one: '100 %: as the pan of the reference',
    },
  },
  coefficients: {
    heading: 'Efficiency and loss, group by group',
    lead: 'Of the pan’s gross area. The reference comes first; bars are the bands. Where one comes out high the other does as well: of both together the heat above is the surer judge.',
    efficiency: 'Efficiency without loss',
    chart: (title: string, count: number, first: string, last: string) =>
      `${title} of ${counted(count, 'group', 'groups')}: ${first} in the reference, ${last} in the newest.`,
    none: 'These days do not tell it.',
    unknown: '?',
    reference: 'Reference',
  },
  table: {
    groups: 'Groups of days',
    days: (count: number) => `Every day of use: ${count}`,
    group: 'Days',
    day: 'Day',
    reference: 'reference',
    count: 'Of use',
    hours: 'Steady flow',
    ratio: 'Against the reference',
    efficiency: 'Efficiency',
    loss: 'Loss without wind [W/m²K]',
    lossCsv: 'Loss without wind [W/m2K]',
    contact: 'Sheet above water',
    contactNote: 'Sheet above water: where it hands on 1000 W/m².',
    contactCsv: 'Sheet above water for each W/m2 handed on',
    measured: 'Heat',
    expected: 'Expected',
    notTold: 'cannot be told',
    least: 'least',
    most: 'most',
    from: 'From',
    to: 'To',
    groupsCsv: 'Groups as CSV',
    daysCsv: 'Days as CSV',
  },
  remarks: 'What bounds the answer',
  cautions: {
    heading: 'Before anybody goes to the pan',
    lead: 'A roof is for someone who may step on it and is held against falling. Let sheet and liner cool, switch off the mains of the pump, and leave to licensed trades what local codes leave to them.',
  },
} as const;
