import { latePart } from '../late-part.tsx';

/** The time chart. Its library is as large as all the rest: the page shows its words before it has it. */
export const lateTimeChart = latePart(() => import('./time-chart.tsx'));
