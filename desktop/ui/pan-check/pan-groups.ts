import type { PanBlock, PanCheck } from '../../../shared-types/pan-check.ts';

/** The groups of a check, the reference first. */
export const allBlocks = ({
  reference,
  blocks,
}: Pick<PanCheck, 'reference' | 'blocks'>): readonly PanBlock[] => [reference, ...blocks];

/** Whether a day is one that the others are held against. */
export const isReferenceDay = ({ reference }: Pick<PanCheck, 'reference'>, day: string): boolean =>
  reference.fromDay <= day && day <= reference.toDay;

/** Hours of steady flow on all days of use. */
export const hoursOf = ({ days }: Pick<PanCheck, 'days'>): number =>
  days.reduce((sum, { hours }) => sum + hours, 0);
