import type { HeavyMethod, JobStage } from '../../../shared-types/jobs.ts';

const stages: Readonly<Record<JobStage, string>> = {
  waiting: 'Getting ready',
  reading: 'Reading the log and rebuilding its weather',
  deciding: 'Deciding the day again',
  living: 'Living the day again',
  best: 'Working out the best possible',
  fitting: 'Fitting the loop',
  sweeping: 'Trying setpoints',
  importing: 'Reading the file',
  checking: 'Looking at the pan',
};

const heavy: Readonly<Record<HeavyMethod, string>> = {
  compareDay: 'a day under other setpoints',
  sweep: 'many setpoints over many days',
  fit: 'a fit of the loop',
  panCheck: 'a check of the pan',
};

/** Words for questions that take long, wherever they were asked. */
export const jobText = {
  running: (stage: JobStage, percent: string) => `${stages[stage]}: ${percent} done.`,
  busy: (stage: JobStage) => `${stages[stage]} …`,
  cancel: 'Give up',
  elsewhere: (method: HeavyMethod, how: string) =>
    `The monitor is busy with ${heavy[method]} for this site. ${how} It was begun elsewhere or before this page was loaded; one such job runs at a time.`,
  end: 'End that job',
} as const;
