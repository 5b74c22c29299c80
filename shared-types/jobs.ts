import { z } from 'zod';
import { requestIdSchema } from './engine.ts';

/** Name that a page gives to a question which takes long, to hear how far it is and to end it. */
export const jobSchema = requestIdSchema;

/** What a job may be busy with. */
export const jobStages = [
  'waiting',
  'reading',
  'deciding',
  'living',
  'best',
  'fitting',
  'sweeping',
  'importing',
  'checking',
] as const;
export const jobStageSchema = z.enum(jobStages);
export type JobStage = z.infer<typeof jobStageSchema>;

/** How far a job is. */
export const jobProgressSchema = z.strictObject({
  doneFraction: z.number().min(0).max(1),
  doing: jobStageSchema,
});
export type JobProgress = z.infer<typeof jobProgressSchema>;

/** Questions of which a site may have one at a time: each keeps a processor busy for long. */
export const heavyMethods = ['compareDay', 'sweep', 'fit', 'panCheck'] as const;
export type HeavyMethod = (typeof heavyMethods)[number];

/** A long job that runs, so that whoever meets it can wait for it or end it. */
export const heavyJobSchema = z.strictObject({
  job: jobSchema,
  method: z.enum(heavyMethods),
  progress: jobProgressSchema,
});
export type HeavyJob = z.infer<typeof heavyJobSchema>;
