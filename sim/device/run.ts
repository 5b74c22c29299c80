import type { Clock } from '../../controller/clock.ts';
import type { Site } from '../../shared-types/site.ts';
import { createPlant } from '../plant/state.ts';
import type { DayKind } from '../weather/day-kinds.ts';
import { createWeather } from '../weather/weather.ts';
import { createDevice, type Device } from './device.ts';
import { createFaultBoard, type FaultBoard } from './fault-board.ts';
import type { FaultWish } from './fault-text.ts';
import { nextLocalMinuteMs } from './local-minute.ts';
import { keepPlant, loadPlant } from './plant-state-file.ts';
import type { DevicePort, PortEvents } from './port.ts';

export interface RunOptions {
  readonly site: Site;
  readonly clock: Clock;
  readonly seed: number;
  readonly kinds?: readonly DayKind[];
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
  const { clock, say } = options;
  const faults = createFaultBoard();
  raiseWishes(faults, options);
  const device = makeDevice(options, faults);
  const port = options.makePort({
    outputs: (heard) => {
      // What was in force until now has to act until now, before the new word holds.
      catchUp();
      device.hear(heard);
      sendFeedback();
    },
    fault: (fault, active) => (active ? faults.raise(fault) : faults.clear(fault)),
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
    port.sendReadings(device.read(), device.standing().atMs);
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

function raiseWishes(faults: FaultBoard, { wishes, clock, site }: RunOptions): void {
  for (const { fault, minuteOfDay } of wishes)
    if (minuteOfDay === null) faults.raise(fault);
    else faults.raise(fault, nextLocalMinuteMs(clock.nowMs(), minuteOfDay, site.timeZone));
}

function makeDevice(options: RunOptions, faults: FaultBoard): Device {
  const { site, clock, seed, kinds } = options;
  const weather = createWeather({ location: site.location, seed, ...(kinds === undefined ? {} : { kinds }) });
  const kept = takeUp(options);
  const { airC } = weather.at(clock.nowMs());
  return createDevice({
    plant: kept?.plant ?? createPlant(site, { waterC: 22, panC: airC }),
    plantAtMs: kept?.atMs ?? clock.nowMs(),
    weather,
    clock,
    wallMs: () => performance.now(),
    seed,
    faults,
  });
}

function takeUp({ plantStateFile, site, say }: RunOptions) {
  if (plantStateFile === undefined) return undefined;
  const loaded = loadPlant(plantStateFile, site);
  if (loaded.ok) return loaded.kept;
  if (loaded.why !== 'absent') say(`${plantStateFile} is ${loaded.why}; the loop begins anew`);
  return undefined;
}

/** A full disk must not stop the device. */
function keep({ plantStateFile, site, say }: RunOptions, device: Device): void {
  if (plantStateFile === undefined) return;
  try {
    keepPlant(plantStateFile, { schema: 1, site: site.name, ...device.standing() });
  } catch (thrown) {
    say(`${plantStateFile} cannot be written: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
  }
}
