/** A mutant that no test can kill, since the engine does the same with it. */
export interface Equivalent {
  /** Below `controller/engine/`. */
  readonly file: string;
  /** The source that is replaced, with what replaces it; both with single blanks. */
  readonly from: string;
  readonly to: string;
  readonly reason: string;
}

export const equivalents: readonly Equivalent[] = [
  {
    file: 'meter/ends-offset.ts',
    from: 'sunHeightDeg !== null',
    to: 'true',
    reason: 'A height that is not known counts as 0 deg in a comparison, which is not dark either.',
  },
  {
    file: 'pair/at-fill.ts',
    from: "phase.name !== 'circulating'",
    to: 'false',
    reason: 'No other phase says that it comes after a fill.',
  },
  {
    file: 'pair/learn.ts',
    from: "phase.name !== 'circulating'",
    to: 'false',
    reason: 'A shortcut: both comparisons ask for circulation themselves.',
  },
  {
    file: 'speed/exercise.ts',
    from: 'differenceK !== null',
    to: 'true',
    reason:
      'A difference that is not known counts as 0 K in a comparison; the start difference is above that.',
  },
  {
    file: 'speed/exercise.ts',
    from: 'coldestPanC === null',
    to: 'false',
    reason: 'A pan that is not known counts as one of 0 °C in a comparison, which is below any release.',
  },
  {
    file: 'speed/follow-gain.ts',
    from: 'target < before.fraction',
    to: 'target <= before.fraction',
    reason: 'A speed that is where it should be does not move in either case.',
  },
  {
    file: 'speed/follow-gain.ts',
    from: 'gap > 0',
    to: 'gap >= 0',
    reason: 'A gap of nought has returned before.',
  },
  {
    file: 'step.ts',
    from: 'runsOnMs === before.flow.runsOnMs',
    to: 'false',
    reason: 'A shortcut: it makes an equal copy.',
  },
  {
    file: 'step.ts',
    from: 'operator === state.operator && failure === state.failure',
    to: 'false',
    reason: 'A shortcut: it makes an equal copy.',
  },
  {
    file: 'step.ts',
    from: 'alarms === commissioned.state.alarms',
    to: 'false',
    reason: 'A shortcut: it makes an equal copy.',
  },
  {
    file: 'step.ts',
    from: 'slots === state',
    to: 'false',
    reason: 'A shortcut: it makes an equal copy.',
  },
  {
    file: 'sun/clock.ts',
    from: 'before.apartMs === null',
    to: 'false',
    reason: 'What is not known counts as 0 in a subtraction, and this calendar is further apart than that.',
  },
  {
    file: 'sun/position.ts',
    from: 'days - day',
    to: 'days + day',
    reason: 'The sun goes round once more for each day, which no cosine tells.',
  },
  {
    file: 'sun/position.ts',
    from: 'solarDays - 0.5',
    to: 'solarDays + 0.5',
    reason: 'The sun goes round once more, which no cosine tells.',
  },
  {
    file: 'sun/position.ts',
    from: 'heightDeg <= 0',
    to: 'heightDeg < 0',
    reason: 'At the horizon the formula gives 0 as well.',
  },
  {
    file: 'bare-plate.ts',
    from: 'round < rounds',
    to: 'round <= rounds',
    reason: 'Another round of the rule changes nothing once it has closed in.',
  },
  {
    file: 'stagnation.ts',
    from: 'step < steps',
    to: 'step <= steps',
    reason: 'The step after sunset has no sun, so it is not the warmest.',
  },
  {
    file: 'sense/sense.ts',
    from: '{ ...unread }',
    to: '{}',
    reason: 'Every reading is written anew; the copy only spares the object its growth.',
  },
  {
    file: 'sense/sensor-rules.ts',
    from: "'missing'",
    to: '""',
    reason: 'A copy of it is written over at every step.',
  },
  {
    file: 'want/net-gain.ts',
    from: 'panC === null',
    to: 'false',
    reason: 'A pan that is not known has no trend either.',
  },
  {
    file: 'want/net-gain.ts',
    from: 'pumpFraction === 0',
    to: 'false',
    reason: 'A shortcut: a flow of nought carries no heat.',
  },
  {
    file: 'want/timers.ts',
    from: 'sheetDifferenceK !== null',
    to: 'true',
    reason:
      'A difference that is not known counts as 0 K in a comparison; the fill difference is above that.',
  },
  {
    file: 'want/timers.ts',
    from: 'differenceK !== null',
    to: 'true',
    reason:
      'A difference that is not known counts as 0 K in a comparison; the start difference is above that.',
  },
  {
    file: 'want/timers.ts',
    from: 'harvest.gainW !== null',
    to: 'true',
    reason: 'A gain that is not known counts as 0 W in a comparison, which is no loss.',
  },
  {
    file: 'alarms/follow.ts',
    from: 'head === null',
    to: 'false',
    reason: 'No alarm is kept under the name of none, so that nothing is found there.',
  },
  {
    file: 'alarms/life.ts',
    from: 'holding === none && isEmpty(before)',
    to: 'false',
    reason: 'A shortcut: where nothing holds and nothing is kept, nothing changes.',
  },
  {
    file: 'alarms/list.ts',
    from: 'isEmpty(alarms)',
    to: 'false',
    reason: 'A shortcut: of no alarms none is listed.',
  },
  {
    file: 'alarms/list.ts',
    from: 'head === null',
    to: 'false',
    reason: 'No alarm is kept under the name of none, so that nothing is found there.',
  },
  {
    file: 'hazards/keep-warm.ts',
    from: 'storeBottomC !== null',
    to: 'true',
    reason: 'A store that is not known counts as one of 0 °C in a comparison, below any frost temperature.',
  },
  {
    file: 'watch/judge-contact.ts',
    from: 'now < known',
    to: 'now <= known',
    reason: 'A contact that is what it was moves by nothing in either case.',
  },
  {
    file: 'watch/flow-bound.ts',
    from: "'sheet'",
    to: '""',
    reason: 'What is not the outlet is the sheet.',
  },
  {
    file: 'watch/heat-flow.ts',
    from: 'panC === null',
    to: 'false',
    reason: 'A pan that no thermometer tells of is not too hot either.',
  },
  {
    file: 'watch/heat-flow.ts',
    from: "phase.name === 'circulating'",
    to: 'true',
    reason: 'No other phase comes here.',
  },
  {
    file: 'watch/learn-flow.ts',
    from: 'flowLMin === null',
    to: 'false',
    reason: 'A flow that is not known counts as 0 L/min in a comparison, of which nothing is learnt.',
  },
  {
    file: 'watch/learn-flow.ts',
    from: 'powerW === null',
    to: 'false',
    reason: 'A power that is not known counts as 0 W in a comparison, of which nothing is learnt.',
  },
  {
    file: 'watch/learn-flow.ts',
    from: 'now > known',
    to: 'now >= known',
    reason: 'A flow that is what it was moves by nothing in either case.',
  },
  {
    file: 'watch/learn-flow.ts',
    from: 'primingS !== undefined',
    to: 'true',
    reason: 'No comparison with what was not learnt holds.',
  },
  {
    file: 'watch/pump-signs.ts',
    from: "reading.quality === 'failed'",
    to: 'false',
    reason: 'What failed has no age, and no comparison with that holds.',
  },
  {
    file: 'watch/pump-signs.ts',
    from: "'failed'",
    to: '""',
    reason: 'What failed has no age, and no comparison with that holds.',
  },
  {
    file: 'watch/pump-signs.ts',
    from: 'fullW === undefined',
    to: 'false',
    reason: 'No comparison with what was not learnt holds, which makes it usual.',
  },
  {
    file: 'watch/runs-on.ts',
    from: 'flowLMin !== null',
    to: 'true',
    reason: 'A flow that is not known counts as 0 L/min in a comparison, of which no pump is seen to run.',
  },
  {
    file: 'watch/reservoir.ts',
    from: 'upkeep.neededMm === null || learntMm === null',
    to: 'upkeep.neededMm === null && learntMm === null',
    reason: 'What is not known counts as 0 mm in a maximum, and no need is below that.',
  },
  {
    file: 'watch/reservoir.ts',
    from: 'upkeep.neededMm === null',
    to: 'false',
    reason: 'What is not known counts as 0 mm in a maximum, and no need is below that.',
  },
  {
    file: 'watch/reservoir.ts',
    from: 'learntMm === null',
    to: 'false',
    reason: 'What is not known counts as 0 mm in a maximum, and no need is below that.',
  },
  {
    file: 'alarms/conditions.ts',
    from: 'facts.failed.length === 0',
    to: 'false',
    reason: 'A shortcut: of no failed sensors none is left.',
  },
  {
    file: 'alarms/conditions.ts',
    from: 'hottestPanC !== null',
    to: 'true',
    reason: 'A pan that is not known counts as one of 0 °C in a comparison, far below any limit of heat.',
  },
  {
    file: 'alarms/conditions.ts',
    from: 'hottestStoreC !== null',
    to: 'true',
    reason: 'A store that is not known counts as one of 0 °C in a comparison, far below any limit of heat.',
  },
  {
    file: 'hazards/air-lows.ts',
    from: 'days !== null',
    to: 'true',
    reason:
      'Days that are not known are those of a day that is not known, which counts as one of the season.',
  },
  {
    file: 'hazards/night-cooling.ts',
    from: 'storeBottomC === null',
    to: 'false',
    reason:
      'A store that is not known counts as one of 0 °C in a comparison, below the lowest floor of 15 °C.',
  },
  {
    file: 'hazards/heat.ts',
    from: 'panC === null',
    to: 'false',
    reason: 'A pan that is not known counts as one of 0 °C, which brings no store near its limit.',
  },
];
