import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hazards } from '../../../controller/engine/hazards/table.ts';
import { step } from '../../../controller/engine/index.ts';
import type { Channel } from '../../../shared-types/channels.ts';
import type { Decision } from '../../../shared-types/engine.ts';
import { decisionSchema } from '../../../shared-types/engine.ts';
import type { Settings } from '../../../shared-types/settings.ts';
import type { Site } from '../../../shared-types/site.ts';
import { type Stretch, settingsDraw, siteDraw, stretchesDraw } from './draws.ts';
import { inputsOf, isRestart, type Seen, walk } from './walk.ts';

const hazardCodes: ReadonlySet<string> = new Set(hazards.map((hazard) => hazard.code));
const panChannels = ['panOutletC', 'panSheetC', 'panInletC'] as const;

/** Holds for every sequence, or shows the shortest that breaks it. */
function always(
  check: (seen: Seen[], site: Site, settings: Settings, stretches: Stretch[]) => void,
  numRuns = 300,
) {
  fc.assert(
    fc.property(stretchesDraw, siteDraw, settingsDraw, (stretches, site, settings) =>
      check(walk(stretches, site, settings), site, settings, stretches),
    ),
    { numRuns },
  );
}

function usable({ belief }: Decision, channel: Channel): number | null {
  const reading = belief.readings[channel];
  return reading === undefined || reading.quality === 'failed' ? null : reading.value;
}

const isPumping = ({ outputs }: Decision) => outputs.pumpFraction > 0;

/** The last resort: a pan that cannot be emptied, or was to be, did not, and is measured to be full. */
function isKeptWarm({ state, decision }: Seen, site: Site): boolean {
  if (decision.reasons.phase.code !== 'frost-measured' || state.frost.keepWarmMs === null) return false;
  if (site.drain === 'none') return decision.belief.water !== 'empty';
  const storeC = usable(decision, 'storeBottomC');
  return state.water.overdue && decision.belief.water === 'full' && storeC !== null;
}

describe('never', () => {
  it('V2: water in a pan at frost without its drain open at the same step', () => {
    always((seen, site, { frostTemperatureC }) => {
      if (site.drain === 'none') return;
      for (const one of seen) {
        const { decision } = one;
        const cold = panChannels.some((channel) => {
          const value = usable(decision, channel);
          return value !== null && value <= frostTemperatureC;
        });
        if (!cold || decision.belief.water === 'empty' || isKeptWarm(one, site)) continue;
        expect(decision.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
      }
    });
  });

  it('V1: a second cold sample without a response', () => {
    always((seen, site, { frostTemperatureC }) => {
      if (site.drain === 'none') return;
      const isCold = ({ input: { readings }, decision }: Seen) => {
        const raw = readings.panSheetC;
        const fresh = raw !== undefined && raw.ageMs <= 100 && raw.fault === undefined;
        return (
          fresh &&
          decision.belief.readings.panSheetC?.quality !== 'failed' &&
          Number(raw.value) <= frostTemperatureC
        );
      };
      for (let i = 1; i < seen.length; i++) {
        const [before, now] = [seen[i - 1], seen[i]];
        if (before === undefined || now === undefined) continue;
        // A sample that comes in the same instant as the one before it is no second look.
        if ([before, now].some(({ input }) => (input.elapsedMs ?? 0) < 1000)) continue;
        if (isCold(before) && isCold(now) && !isKeptWarm(now, site))
          expect(isPumping(now.decision)).toBe(false);
      }
    });
  });

  it('V3: the pump into an open drain, or while the pan runs empty', () => {
    always((seen, site) => {
      for (const { decision } of seen) {
        const { outputs, phase } = decision;
        if (!isPumping(decision)) continue;
        expect(['filling', 'circulating']).toContain(phase);
        expect(outputs.drainPumpOn).toBe(false);
        if (site.drain === 'drain-valve') expect(outputs.drainOpen).toBe(false);
      }
    });
  });

  it('V3: the pump for over 10 s while the device says that the drain is open', () => {
    always((seen, site, { staleAfterS }) => {
      if (site.drain !== 'drain-valve') return;
      let openSinceMs: number | null = null;
      for (const one of seen) {
        const { input, before, state, decision } = one;
        const { feedback } = input;
        const saidMs = state.runMs - (feedback?.ageMs ?? 0);
        const open =
          feedback?.drainOpen === true &&
          feedback.ageMs <= staleAfterS * 1000 &&
          before.outputs.pumpFraction > 0 &&
          saidMs >= before.pump.sinceMs;
        openSinceMs = open && !isRestart(one, site) ? (openSinceMs ?? state.runMs) : null;
        if (openSinceMs !== null && state.runMs - openSinceMs >= 10_000)
          expect(isPumping(decision)).toBe(false);
      }
    });
  });

  it('V3: a circulating pump dry for over 20 s', () => {
    always((seen, site) => {
      let drySinceMs: number | null = null;
      for (const one of seen) {
        const { input, before, state, decision } = one;
        const raw = input.readings.flowLMin;
        const dry =
          raw !== undefined &&
          usable(decision, 'flowLMin') !== null &&
          raw.ageMs <= 100 &&
          Number(raw.value) < 2;
        const running = before.phase.name === 'circulating' && !isRestart(one, site);
        drySinceMs =
          site.sensors.flowLMin !== undefined && dry && running ? (drySinceMs ?? state.runMs) : null;
        if (drySinceMs !== null && state.runMs - drySinceMs > 20_000) expect(isPumping(decision)).toBe(false);
      }
    });
  });

  it('V2: water moved from or to a store that is at frost itself', () => {
    always((seen, _site, { frostTemperatureC }) => {
      for (const { decision } of seen) {
        const storeC = usable(decision, 'storeBottomC');
        if (storeC !== null && storeC <= frostTemperatureC) expect(isPumping(decision)).toBe(false);
      }
    });
  });

  it('V2: a pan taken for empty by mere time while the device says that the drain is shut', () => {
    always((seen, site, { staleAfterS }) => {
      if (site.drain !== 'drain-valve' || site.sensors.panLevelMm !== undefined) return;
      for (const { before, input, decision } of seen) {
        const { feedback } = input;
        const shut = feedback?.drainOpen === false && feedback.ageMs <= staleAfterS * 1000;
        if (shut && before.water.level !== 'empty') expect(decision.belief.water).not.toBe('empty');
      }
    });
  });

  it('V4: anything but safe outputs while blind, or after a restart', () => {
    always((seen, site) => {
      for (const one of seen) {
        const { decision } = one;
        const blind =
          usable(decision, 'storeBottomC') === null ||
          (usable(decision, 'panOutletC') === null && usable(decision, 'panSheetC') === null);
        const measuredFrost = site.drain === 'none' && decision.reasons.phase.code === 'frost-measured';
        if (blind && !measuredFrost)
          expect(decision.outputs).toMatchObject({ pumpFraction: 0, exchangerPumpOn: false });
        if (blind && site.drain !== 'none') expect(decision.outputs.drainOpen).toBe(true);
        if (isRestart(one, site) && site.drain !== 'none') expect(isPumping(decision)).toBe(false);
      }
    });
  });

  it('V5: a request that changes what a protection demands', () => {
    always((seen, site, settings) => {
      for (const { before, input, decision } of seen) {
        if (input.request === null) continue;
        const unasked = step(before, { ...input, request: null }, site, settings).decision;
        const { code } = unasked.reasons.phase;
        const unlocks = input.request.operation.kind === 'automatic' && code === 'fill-failed-locked';
        if (hazardCodes.has(code) && !unlocks) expect(decision.outputs).toEqual(unasked.outputs);
      }
    });
  });

  it('V6: harvest into a store at its limit', () => {
    always((seen, site, settings) => {
      const limitC = Math.min(settings.storeLimitC, site.store.maximumC);
      for (const one of seen) {
        const { decision } = one;
        const hot = (['storeBottomC', 'storeTopC'] as const).some(
          (channel) => (usable(decision, channel) ?? -1) >= limitC,
        );
        if (!hot || !isPumping(decision)) continue;
        const { cooling } = one.state.heat;
        expect(isKeptWarm(one, site) || cooling).toBe(true);
        // Neither is a harvest: the pan is no warmer than what it is pumped to.
        if (decision.belief.water === 'full')
          expect(decision.belief.differenceK).toBeLessThanOrEqual(cooling ? settings.stopDifferenceK : 0);
      }
    });
  });

  it('V7: a start or a stop against least times and starts per hour, protections excepted', () => {
    always((seen, site, settings) => {
      let changedMs = 0;
      const startsMs: number[] = [];
      for (const one of seen) {
        const { before, state, decision } = one;
        const now = state.runMs;
        if (isRestart(one, site)) changedMs = now;
        const was = before.outputs.pumpFraction > 0 && !isRestart(one, site);
        if (was === isPumping(decision)) continue;
        const byHazard = hazardCodes.has(decision.reasons.phase.code);
        const heldMs = now - changedMs;
        if (!byHazard)
          expect(heldMs).toBeGreaterThanOrEqual(1000 * (was ? settings.leastOnS : settings.leastOffS) - 1e-6);
        if (!was && !byHazard)
          expect(startsMs.filter((startMs) => now - startMs < 3_600_000).length).toBeLessThan(
            settings.startsPerHour,
          );
        if (!was) startsMs.push(now);
        changedMs = now;
      }
    });
  });

  it('V8: a total that falls, or heat from a sensor that failed', () => {
    always((seen) => {
      let before: Decision['meter']['total'] | undefined;
      for (const { decision } of seen) {
        const { total, today } = decision.meter;
        for (const name of Object.keys(total) as (keyof typeof total)[]) {
          expect(total[name]).toBeGreaterThanOrEqual(before?.[name] ?? 0);
          expect(today[name]).toBeGreaterThanOrEqual(0);
        }
        const emptied = decision.reasons.phase.code === 'emptied';
        const blind = usable(decision, 'panOutletC') === null && decision.phase === 'circulating';
        if (blind && !emptied) expect(total.heatHomeJ).toBe(before?.heatHomeJ ?? 0);
        before = total;
      }
    });
  });

  it('V9: an output without a reason, or a decision of another shape', () => {
    always((seen) => {
      for (const { decision } of seen) {
        expect(decisionSchema.safeParse(decision).error).toBeUndefined();
        expect(decision.reasons.phase.code).not.toBe('internal-error');
        const { drain } = decision.reasons;
        if (drain.code === 'drain-closed-to-hold') expect(decision.outputs.drainOpen).toBe(false);
        for (const { text } of Object.values(decision.reasons)) expect(text).toMatch(/^[A-Z][^?]*\.$/);
      }
    });
  });

  it('V10: another decision from the same inputs, or from a state that went through JSON', () => {
    always((seen, site, settings) => {
      for (const { before, input, decision, state } of seen) {
        const again = step(JSON.parse(JSON.stringify(before)), input, site, settings);
        expect(again.decision).toEqual(decision);
        expect(again.state).toEqual(state);
      }
    });
  });

  it('V10: a calendar that jumps and decides anything but labels', () => {
    const labels = new Set(['nowMs', 'sinceMs', 'shelvedUntilMs']);
    const bare = (decision: Decision) =>
      JSON.stringify(decision, (key, value) => (labels.has(key) ? 0 : value));
    fc.assert(
      fc.property(
        stretchesDraw,
        siteDraw,
        settingsDraw,
        fc.array(fc.integer({ min: -86_400_000, max: 86_400_000 }), { minLength: 1, maxLength: 20 }),
        (stretches, site, settings, jumps) => {
          const seen = walk(stretches, site, settings);
          let state: Seen['state'] | undefined = seen[0]?.before;
          let i = 0;
          for (const input of inputsOf(stretches)) {
            if (state === undefined) return;
            // Every other step, so that none stands by its word for long; a restart has to believe what it hears.
            const steps = i % 2 === 0 || isRestart({ ...(seen[i] as Seen), before: state }, site);
            const nowMs = input.nowMs + (steps ? 0 : (jumps[i % jumps.length] ?? 0));
            const stepped = step(state, { ...input, nowMs }, site, settings);
            expect(bare(stepped.decision)).toBe(bare((seen[i] as Seen).decision));
            ({ state } = stepped);
            i++;
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
