import { type JobStage, jobStages } from '../../shared-types/jobs.ts';

/**
 * What host and worker share of a job while it runs: the worker never pauses to hear a message, so both
 * sides look into the same few bytes.
 */
export type JobFlags = Int32Array<SharedArrayBuffer>;

const doneAt = 0;
const cancelledAt = 1;
const stageAt = 2;
/** Steps in which progress is kept. */
const wholeJob = 1000;

export const newJobFlags = (): JobFlags => new Int32Array(new SharedArrayBuffer(12));

/** @param fraction - Done share, 0 to 1. */
export function setDone(flags: JobFlags, fraction: number): void {
  Atomics.store(flags, doneAt, Math.round(Math.min(1, Math.max(0, fraction)) * wholeJob));
}
export const doneFraction = (flags: JobFlags): number => Atomics.load(flags, doneAt) / wholeJob;

/** Says what the job is busy with from now on. */
export function setStage(flags: JobFlags, stage: JobStage): void {
  Atomics.store(flags, stageAt, jobStages.indexOf(stage));
}
export const stageOf = (flags: JobFlags): JobStage => jobStages[Atomics.load(flags, stageAt)] ?? 'waiting';

export function cancel(flags: JobFlags): void {
  Atomics.store(flags, cancelledAt, 1);
}
export const isCancelled = (flags: JobFlags): boolean => Atomics.load(flags, cancelledAt) !== 0;
