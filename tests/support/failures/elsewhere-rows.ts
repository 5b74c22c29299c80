import type { ElsewhereRow } from './row.ts';

/** Failures around the loop, which real processes rehearse. */
export const elsewhereRows: readonly ElsewhereRow[] = [
  {
    failure: 'broker gone an hour',
    file: 'tests/integration/loop-through-mosquitto.test.ts',
    test: 'runs the pump, falls safe without the broker, comes back by itself, and keeps its books',
    person: 'Nothing while the loop is safe; looks after the broker when it does not come back.',
  },
  {
    failure: 'broker back with old retained messages',
    file: 'tests/integration/mosquitto.test.ts',
    test: 'refuses retained readings, whose age nobody knows, and takes live ones',
    person: 'Nothing.',
  },
  {
    failure: 'broker back with old retained messages',
    file: 'tests/integration/controller-process.test.ts',
    test: 'answers requests and obeys none that is retained, stale or malformed',
    person: 'Asks again.',
  },
  {
    failure: 'broker back with old retained messages',
    file: 'tests/integration/device.test.ts',
    test: 'refuses retained outputs, left from before or told now',
    person: 'Nothing.',
  },
  {
    failure: 'controller killed at any instant',
    file: 'tests/integration/controller-process.test.ts',
    test: 'goes on after being killed, its totals neither lost nor doubled',
    person: 'Nothing where something starts it again.',
  },
  {
    failure: 'controller killed at any instant',
    file: 'tests/unit/controller/log/damage.test.ts',
    test: 'loses no step that it kept when it is killed, and has none twice',
    person: 'Nothing.',
  },
  {
    failure: 'wrong settings file',
    file: 'tests/integration/controller-process.test.ts',
    test: 'names each fault of the site file in a line of its own, and starts nothing',
    person: 'Mends the named lines.',
  },
  {
    failure: 'wrong settings file',
    file: 'tests/unit/controller/daemon/stepper.test.ts',
    test: 'takes new settings at the next step, whole or not at all',
    person: 'Asks for settings that fit together; the old ones stay in force.',
  },
];
