import type { Site } from '../../../shared-types/site.ts';
import {
  coldestPanC,
  eachStep,
  type Invariant,
  isPumping,
  isRestart,
  type Seen,
  usable,
} from './invariant.ts';

/** True when the pump ran before this step, and a flow that is measured is there. */
export function hasFlow({ before, input, decision }: Seen, site: Site): boolean {
  const { pumpFraction } = before.outputs;
  if (pumpFraction === 0 || isRestart({ input, before }, site)) return false;
  const flowLMin = usable(decision, 'flowLMin');
  return flowLMin === null || flowLMin >= 0.1 * site.pump.ratedFlowLMin * pumpFraction;
}

export const heatDumpOnlyWithFlow: Invariant = {
  name: 'heat-dump-only-with-flow',
  promise:
    'The heat dump is on only where there is one, and while water goes round to dump heat: never with the pump off, never in a frost, and never under a flow that is measured to be none.',
  exceptions: [],
  watch: eachStep((seen, { site, settings }) => {
    const { state, decision } = seen;
    const { heatDumpOn } = decision.outputs;
    if (site.heatDump === undefined) return heatDumpOn === undefined ? undefined : 'a heat dump of nobody';
    if (heatDumpOn !== true) return;
    const { code } = decision.reasons.phase;
    if (!isPumping(decision)) return 'on without the pump';
    if (decision.phase !== 'circulating' || code !== 'dumping-heat')
      return `on in ${decision.phase} for ${code}`;
    const panC = coldestPanC(decision);
    if (state.frost.latched !== null || panC === null || panC <= settings.frostTemperatureC)
      return 'on in frost';
    return hasFlow(seen, site) ? undefined : 'on without flow';
  }),
};
