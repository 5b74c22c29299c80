import { z } from 'zod';

/** Light that each square metre of sheet took up [W/m2], in equal steps from `fromMs` on, with the ends of its band. */
export const absorbedSchema = z.strictObject({
  fromMs: z.number(),
  stepMs: z.number().positive(),
  valueWM2: z.array(z.number()),
  lowWM2: z.array(z.number()),
  highWM2: z.array(z.number()),
});
export type Absorbed = z.infer<typeof absorbedSchema>;

/** One step of it in which there may have been light [W/m2]. */
export interface LitStep {
  readonly fromMs: number;
  readonly toMs: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Where not even the upper end of the band is as bright, it is night [W/m2]. A design choice. */
const darkWM2 = 5;

/** The steps in which there may have been light, in their order. */
export function litSteps({ fromMs, stepMs, valueWM2, lowWM2, highWM2 }: Absorbed): readonly LitStep[] {
  return valueWM2
    .map((value, step) => ({
      fromMs: fromMs + step * stepMs,
      toMs: fromMs + (step + 1) * stepMs,
      value,
      low: lowWM2[step] ?? value,
      high: highWM2[step] ?? value,
    }))
    .filter(({ high }) => high >= darkWM2);
}
