import type { SweepProgress } from './sweep.ts';

/** What progress is written to. */
interface Screen {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/** Tells each hundredth of the work where a person looks on, else each tenth on a line of its own. */
export function tellProgress(screen: Screen): (progress: SweepProgress) => void {
  const live = screen.isTTY === true;
  const parts = live ? 100 : 10;
  let told = -1;
  return ({ done, all }) => {
    const part = Math.floor((parts * done) / all);
    if (part <= told) return;
    told = part;
    const text = `${done} of ${all} outcomes`;
    screen.write(live ? `\r${text}${done === all ? '\n' : ''}` : `${text}\n`);
  };
}
