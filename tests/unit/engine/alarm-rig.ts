import type { Alarm as Seen } from '../../../shared-types/alarms.ts';
import type { Answer } from '../../../shared-types/engine.ts';
import { emptyLoop, type Loop, makeSite } from './rig.ts';

const code = 'output-not-followed';
const obeyed = { pumpFraction: 0, drainOpen: true, ageMs: 100 };

/** One alarm of an engine, raised and let return by what its device says: it is not to be told what follows. */
export class Alarm {
  readonly loop: Loop;

  constructor() {
    this.loop = emptyLoop(makeSite('drain-valve'));
  }

  get seen(): Seen | undefined {
    return this.loop.alarm(code);
  }

  /** The state by name; an alarm that is not listed is normal. */
  get state(): Seen['state'] | 'normal' {
    return this.seen?.state ?? 'normal';
  }

  get isActive(): boolean {
    return this.seen?.active === true;
  }

  get isAcknowledged(): boolean {
    return this.state === 'normal' || this.state === 'acknowledged';
  }

  raise(): void {
    this.loop.feedback = { ...obeyed, drainOpen: false };
    this.loop.run(40);
  }

  /** Heals, and waits for the longest off-delay of an alarm that repeats itself. */
  letReturn(): void {
    this.loop.feedback = obeyed;
    this.loop.run(3700, 20);
  }

  acknowledge(): Answer['code'] | undefined {
    return this.loop.ask({ kind: 'acknowledge', alarm: code })?.code;
  }

  shelve(minutes: number): Answer['code'] | undefined {
    return this.loop.ask({ kind: 'shelve', alarm: code, minutes })?.code;
  }

  unshelve(): Answer['code'] | undefined {
    return this.loop.ask({ kind: 'unshelve', alarm: code })?.code;
  }
}
