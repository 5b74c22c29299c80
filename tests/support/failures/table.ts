import type { FailureRow } from './row.ts';
import { sensorRows } from './sensor-rows.ts';
import { waterRows } from './water-rows.ts';
import { weatherRows } from './weather-rows.ts';

/** Every failure that the simulated loop rehearses. */
export const failureRows: readonly FailureRow[] = [...sensorRows, ...waterRows, ...weatherRows];

/** Every failure that has to be rehearsed, here or by real processes. */
export const failures = [
  'sensor open',
  'sensor short',
  'sensor stuck',
  'sensor drifting 5 K',
  'pan and store sensors swapped',
  'sensor noisy',
  'sensor spiking',
  'sensor fallen off the sheet',
  'sun-heated ambient sensor',
  'all sensors silent',
  'one topic silent',
  'pump dead',
  'pump stuck on (relay welded)',
  'pump reversed',
  'half flow',
  'no prime',
  'air pocket',
  'filter clogging over days',
  'drain valve stuck shut',
  'drain valve stuck open',
  'reservoir short of water',
  'slow leak',
  'burst liner',
  'store valve closed',
  'frost night clear',
  'frost night with wind',
  'frost after a hot day',
  'frost with dead ambient sensor',
  'frost with power cut and return',
  'boiling-hot store',
  'liner heat with a dead pump',
  'broken-cloud day',
  'snow on the sheet',
  'broker gone an hour',
  'broker back with old retained messages',
  'controller killed at any instant',
  'clock jump',
  'wrong settings file',
] as const;
