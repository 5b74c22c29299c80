import type { EngineInput, Outputs } from '../../shared-types/engine.ts';
import type { Site } from '../../shared-types/site.ts';
import { emptying, type Policy, pumping, resting } from './policy.ts';

export interface ThermostatSettings {
  /** Pan outlet over store bottom at which the pump starts and stops. */
  readonly onK: number;
  readonly offK: number;
  /** Dry sheet over store bottom at which the pan is filled. */
  readonly fillK: number;
  /** Empties the pan when the difference closes; otherwise the water stays for ever. */
  readonly empties: boolean;
  /** A fresh fill runs this long before its difference counts. */
  readonly settleS: number;
}

/** The plain fixed-difference rule that an installer would set (common practice: 8 K on, 4 K off). */
export const plainThermostat: ThermostatSettings = {
  onK: 8,
  offK: 4,
  fillK: 8,
  empties: false,
  settleS: 900,
};

type Phase = 'empty' | 'filling' | 'running' | 'resting' | 'emptying';

const outputsOf: Readonly<Record<Phase, Outputs>> = {
  empty: emptying,
  filling: { ...pumping, exchangerPumpOn: false },
  running: pumping,
  resting,
  emptying,
};

/** A pan counts as full at this share of its depth. */
const fullFraction = 0.9;

/** A thermostat by differences, without any other thought. Where the pan empties with the pump, it does so here. */
export function thermostat(site: Site, own: ThermostatSettings): Policy {
  const { fillTimeS = 0, drainTimeS = 0 } = site.settings ?? {};
  const empties = own.empties || site.drain === 'pump-stop';
  let phase: Phase = 'emptying';
  let inPhaseS = 0;
  let settling = false;

  function next(input: EngineInput): Phase {
    const { panOutletC, panSheetC, storeBottomC, panLevelMm } = input.readings;
    const outletK = (panOutletC?.value ?? Number.NaN) - (storeBottomC?.value ?? Number.NaN);
    const sheetK = (panSheetC?.value ?? Number.NaN) - (storeBottomC?.value ?? Number.NaN);
    const depthMm = site.pan.waterDepthM * 1000;
    switch (phase) {
      case 'empty':
        return sheetK >= own.fillK ? 'filling' : phase;
      case 'filling': {
        const level = panLevelMm?.value ?? undefined;
        const full = level === undefined ? inPhaseS >= fillTimeS : level >= fullFraction * depthMm;
        settling ||= full;
        return full ? 'running' : phase;
      }
      case 'running':
        if (settling && inPhaseS < own.settleS) return phase;
        settling = false;
        if (outletK > own.offK) return phase;
        return empties ? 'emptying' : 'resting';
      case 'resting':
        return outletK >= own.onK ? 'running' : phase;
      case 'emptying':
        return inPhaseS >= drainTimeS ? 'empty' : phase;
    }
  }

  return (input) => {
    inPhaseS += (input.elapsedMs ?? 0) / 1000;
    const before = phase;
    phase = next(input);
    if (phase !== before) inPhaseS = 0;
    return outputsOf[phase];
  };
}
