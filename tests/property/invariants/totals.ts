import { type Invariant, usable } from './invariant.ts';

export const totalsNeverFall: Invariant = {
  name: 'totals-never-fall',
  promise: 'No total ever falls or is other than a number, restarts included; none of today is below nought.',
  exceptions: [],
  watch: () => {
    let before: Readonly<Record<string, number>> = {};
    return ({ decision }) => {
      const total: Readonly<Record<string, number>> = decision.meter.total;
      const today: Readonly<Record<string, number>> = decision.meter.today;
      for (const name in total) {
        const now = total[name] as number;
        if (!(Number.isFinite(now) && now >= (before[name] ?? 0))) return `${name} fell to ${now}`;
        if (!((today[name] as number) >= 0)) return `${name} of today is ${today[name]}`;
      }
      before = total;
      return undefined;
    };
  },
};

export const failedSensorAddsNoHeat: Invariant = {
  name: 'failed-sensor-adds-no-heat',
  promise:
    'Between two steps at which the pan circulates and its outlet cannot be read, no heat is counted as brought home.',
  exceptions: [
    'Heat that comes home by emptying was measured when the emptying began.',
    'Where no outlet is measured, the sheet stands for it.',
    'Between the last step with a reading and one at which nothing flows any more, half of the last rate counts.',
  ],
  watch: ({ site }) => {
    let beforeJ = 0;
    let blindBefore = false;
    return ({ decision }) => {
      const { heatHomeJ } = decision.meter.total;
      const gainedJ = heatHomeJ - beforeJ;
      const measured = site.sensors.panOutletC !== undefined;
      const blind = measured && decision.phase === 'circulating' && usable(decision, 'panOutletC') === null;
      const twice = blind && blindBefore;
      beforeJ = heatHomeJ;
      blindBefore = blind;
      return twice && gainedJ > 0 ? `${gainedJ} J from an outlet that cannot be read` : undefined;
    };
  },
};
