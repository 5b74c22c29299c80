import { frostBlindOpensDrain, frostIsAnswered, frostOpensDrain, frostStoreStands } from './frost.ts';
import { heatDumpOnlyWithFlow } from './heat-dump.ts';
import type { Invariant } from './invariant.ts';
import { leastTimesHold } from './least-times.ts';
import { leaseEnds, operatorIsAnswered, operatorOverridesNothing } from './operator.ts';
import {
  pumpLeavesOpenDrain,
  pumpNeverRunsDry,
  pumpOnlyWhenPumping,
  timeProvesOnlyWhatDrains,
} from './pump.ts';
import { decisionsHaveTheirShape, outputsHaveReasons } from './reasons.ts';
import { clockDecidesNothing, stateSurvivesJson } from './repeat.ts';
import { fullStoreTakesNothing } from './store.ts';
import { failedSensorAddsNoHeat, totalsNeverFall } from './totals.ts';
import {
  blindIsSafe,
  doubtStartsNothing,
  protectionStands,
  restartIsSafe,
  soundIsHeard,
  staleIsNotUsed,
} from './trust.ts';

/** What every sequence of steps is held to. */
export const invariants: readonly Invariant[] = [
  frostIsAnswered,
  frostOpensDrain,
  frostStoreStands,
  frostBlindOpensDrain,
  pumpOnlyWhenPumping,
  pumpLeavesOpenDrain,
  pumpNeverRunsDry,
  timeProvesOnlyWhatDrains,
  blindIsSafe,
  staleIsNotUsed,
  soundIsHeard,
  restartIsSafe,
  doubtStartsNothing,
  protectionStands,
  operatorOverridesNothing,
  operatorIsAnswered,
  leaseEnds,
  fullStoreTakesNothing,
  heatDumpOnlyWithFlow,
  leastTimesHold,
  totalsNeverFall,
  failedSensorAddsNoHeat,
  outputsHaveReasons,
];

/** The same, and what takes too long to be asked at every step of every sequence. */
export const allInvariants: readonly Invariant[] = [
  ...invariants,
  decisionsHaveTheirShape,
  stateSurvivesJson,
  clockDecidesNothing,
];
