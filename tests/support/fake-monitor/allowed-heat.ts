import type { AllowedHeat } from '../../../shared-types/allowed-heat.ts';
import { testDecision, testNowMs } from './snapshot.ts';

/** Made-up: three quarters of what the weather allowed came home. */
export const testAllowedHeat: AllowedHeat = {
  state: 'told',
  day: '2031-06-21',
  sun: 'measured',
  untilMs: testNowMs,
  allowedJ: testDecision.meter.today.heatHomeJ / 0.75,
  heatHomeJ: testDecision.meter.today.heatHomeJ,
};
