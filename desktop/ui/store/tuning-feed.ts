import type { Settings } from '../../../shared-types/settings.ts';
import type { SettingRange } from '../../../shared-types/tuning.ts';
import type { Door } from '../door.ts';
import { createJobSlot } from './job-slot.ts';
import { loadInto, readyValue } from './loaded.ts';
import { selectHeavy, selectKeptFit, useTuning } from './tuning-store.ts';

/** Questions that live logged days again; each answer lands in the store of tuning. */
export interface TuningFeed {
  /** @param best - Asks for the best possible as well. */
  compareDay(site: string, day: string, settings: Settings, best: boolean): Promise<void>;
  cancelComparison(): void;
  sweep(site: string, days: readonly string[], ranges: readonly SettingRange[]): Promise<void>;
  cancelSweep(): void;
  /** Fits the loop; a fit that converged is asked for again, since it is kept from then on. */
  fit(site: string, days: readonly string[]): Promise<void>;
  cancelFit(): void;
  /** @param referenceDays - What the others are held against; none: the oldest of the days. */
  panCheck(site: string, days: readonly string[], referenceDays: readonly string[]): Promise<void>;
  cancelPanCheck(): void;
  loadKeptFit(site: string): Promise<void>;
  /** Asks whether a long job runs for a site, whoever began it. */
  loadHeavy(site: string): Promise<void>;
  endHeavy(site: string, job: string): Promise<void>;
}

export function createTuningFeed(door: Door): TuningFeed {
  const slots = {
    comparison: createJobSlot(door, 'compareDay'),
    sweep: createJobSlot(door, 'sweep'),
    fit: createJobSlot(door, 'fit'),
    panCheck: createJobSlot(door, 'panCheck'),
  };
  const giveUp = (name: keyof typeof slots) => () => {
    slots[name].cancel();
    useTuning.setState({ [name]: null });
  };
  const loadHeavy = async (site: string) => {
    const reply = await door.call('heavyJob', { site });
    if (!reply.ok) return;
    const before = selectHeavy(site)(useTuning.getState());
    useTuning.setState(({ heavy }) => ({ heavy: { ...heavy, [site]: reply.result } }));
    // Somebody's fit is over: what is kept may be another one now.
    if (before?.method === 'fit' && reply.result?.job !== before.job) await loadKeptFit(door, site);
  };
  const keptFit = (site: string) => readyValue(selectKeptFit(site)(useTuning.getState()));
  return {
    compareDay(site, day, settings, best) {
      const keptThen = keptFit(site);
      return slots.comparison.run({ site, day, settings, best }, (outcome) =>
        useTuning.setState({ comparison: { site, day, settings, keptThen, outcome } }),
      );
    },
    cancelComparison: giveUp('comparison'),
    sweep(site, days, ranges) {
      const keptThen = keptFit(site);
      return slots.sweep.run({ site, days: [...days], ranges: [...ranges] }, (outcome) =>
        useTuning.setState({ sweep: { site, days, ranges, keptThen, outcome } }),
      );
    },
    cancelSweep: giveUp('sweep'),
    async fit(site, days) {
      await slots.fit.run({ site, days: [...days] }, (outcome) =>
        useTuning.setState({ fit: { site, days, outcome } }),
      );
      await loadKeptFit(door, site);
    },
    cancelFit: giveUp('fit'),
    panCheck(site, days, referenceDays) {
      const keptThen = keptFit(site);
      const asked = { site, days: [...days], referenceDays: [...referenceDays] };
      return slots.panCheck.run(asked, (outcome) =>
        useTuning.setState({ panCheck: { site, days, referenceDays, keptThen, outcome } }),
      );
    },
    cancelPanCheck: giveUp('panCheck'),
    loadKeptFit: (site) => loadKeptFit(door, site),
    loadHeavy,
    async endHeavy(site, job) {
      await door.call('cancelJob', { job });
      await loadHeavy(site);
    },
  };
}

const loadKeptFit = (door: Door, site: string): Promise<void> =>
  loadInto(
    selectKeptFit(site)(useTuning.getState()),
    (entry) => useTuning.setState(({ keptFits }) => ({ keptFits: { ...keptFits, [site]: entry } })),
    door.call('keptFit', { site }),
  );
