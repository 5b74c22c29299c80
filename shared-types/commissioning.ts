import { z } from 'zod';

/** The steps of a commissioning run, in their order; `ended` is one that was broken off. */
export const commissioningSteps = ['emptying', 'filling', 'flowing', 'draining', 'done', 'ended'] as const;
export type CommissioningStep = (typeof commissioningSteps)[number];

/** What a commissioning run looks at. */
export const commissioningChecks = [
  'fill-time',
  'pump-direction',
  'sensors-agree',
  'drain-time',
  'outputs-follow',
  'outputs-drop',
] as const;
export type CommissioningCheck = (typeof commissioningChecks)[number];

/** `by-hand`: nothing here can show it, so that a person has to look. */
export const commissioningResults = ['passed', 'failed', 'by-hand'] as const;
export type CommissioningResult = (typeof commissioningResults)[number];

/** Where a commissioning run stands, and what it has found so far. */
export const commissioningSchema = z.strictObject({
  step: z.enum(commissioningSteps),
  text: z.string(),
  findings: z.array(
    z.strictObject({
      check: z.enum(commissioningChecks),
      result: z.enum(commissioningResults),
      text: z.string(),
    }),
  ),
});
export type Commissioning = z.infer<typeof commissioningSchema>;
