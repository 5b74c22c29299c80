import type { Clock } from '../../controller/clock.ts';
import { createPlant } from '../plant/state.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { createDevice, type Device } from './device.ts';
import { createFaultBoard, type FaultBoard, raiseWishes } from './fault-board.ts';
import type { FaultWish } from './fault-text.ts';
import { keepPlant, loadPlant } from './plant-state-file.ts';
import type { DevicePort, PortEvents } from './port.ts';

export interface RunOptions {
  readonly scenario: Scenario;
  readonly clock: Clock;
  /** Faults beside those of the scenario. */
  readonly wishes: readonly FaultWish[];
  /** File from which the loop goes on, and in which it is put away. */
  readonly plantStateFile?: string;
  readonly makePort: (events: PortEvents) => DevicePort;
  readonly say: (text: string) => void;
}

const readingEveryMs = 2000;
const leastWallIntervalMs = 100;
const keepEveryWallMs = 30_000;

/** Runs the simulated device until it is stopped. @returns how to stop it. */
export async function runDevice(options: RunOptions): Promise<() => Promise<void>> {
  const { clock, say, scenario } = options;
  const { timeZone } = scenario.site;
  const faults = createFaultBoard(scenario.site);
  const device = makeDevice(options, faults);
  const raise = (wishes: readonly FaultWish[]) => {
    // The loop has lived up to its instant; what is raised now comes right after it.
    const fromMs = Math.max(clock.nowMs(), device.standing().atMs + 1);
    raiseWishes(faults, wishes, fromMs, timeZone);
  };
  raise([...scenario.wishes, ...options.wishes]);
  const port = options.makePort({
    outputs: (heard) => {
      // What was in force until now has to act until now, before the new word holds.
      catchUp();
      device.hear(heard);
      sendFeedback();
    },
    fault: (wish, active) => {
      catchUp();
      if (active) raise([wish]);
      else faults.clear(wish.fault);
    },
    powered: device.powered,
    say,
  });
  let told = '';
  let stopping = false;
  const sendFeedback = (always = false) => {
    const feedback = device.feedback();
    const text = JSON.stringify(feedback);
    if (!stopping && (always || text !== told)) port.sendFeedback(feedback);
    told = text;
  };
  const catchUp = () => {
    const leftOutMs = device.catchUp();
    if (leftOutMs > 0) say(`slept too long: ${Math.round(leftOutMs / 1000)} s of the loop are left out`);
  };
  const report = () => {
    catchUp();
    const values = device.read();
    if (Object.keys(values).length > 0) port.sendReadings(values, device.standing().atMs);
    sendFeedback(true);
  };

  await port.open();
  const timer = setInterval(report, Math.max(leastWallIntervalMs, readingEveryMs / clock.speed));
  const keeper = setInterval(() => keep(options, device), keepEveryWallMs);
  return async () => {
    stopping = true;
    clearInterval(timer);
    clearInterval(keeper);
    await port.close();
    keep(options, device);
  };
}

function makeDevice(options: RunOptions, faults: FaultBoard): Device {
  const { clock, scenario } = options;
  const { site, seed, weather, exactSensors } = scenario;
  const kept = takeUp(options);
  const nowMs = clock.nowMs();
  return createDevice({
    plant: kept?.plant ?? createPlant(site, scenario.plantOptions(nowMs)),
    plantAtMs: kept?.atMs ?? nowMs,
    weather,
    clock,
    wallMs: () => performance.now(),
    seed,
    exactSensors,
    faults,
  });
}

function takeUp({ plantStateFile, scenario, say }: RunOptions) {
  if (plantStateFile === undefined) return undefined;
  const loaded = loadPlant(plantStateFile, scenario.site, scenario.setup);
  if (loaded.ok) return loaded.kept;
  if (loaded.why !== 'absent') say(`${plantStateFile} is ${loaded.why}; the loop begins anew`);
  return undefined;
}

/** A full disk must not stop the device. */
function keep({ plantStateFile, scenario, say }: RunOptions, device: Device): void {
  if (plantStateFile === undefined) return;
  try {
    keepPlant(plantStateFile, { schema: 2, site: scenario.site.name, ...device.standing() });
  } catch (thrown) {
    say(`${plantStateFile} cannot be written: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
  }
}
