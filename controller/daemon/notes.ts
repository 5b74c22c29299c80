import type { LogEvent } from '../../shared-types/log.ts';
import type { Clock } from '../clock.ts';
import type { LogWriter } from '../log/log.ts';

/** What happens around the loop, into the log and, where somebody may want to act, onto the screen. */
export interface Notes {
  note(kind: LogEvent['kind'], text: string, values?: LogEvent['values']): void;
  /** Says when the log stopped being written, and when it is written again. */
  watchLog(): void;
}

const quiet: ReadonlySet<LogEvent['kind']> = new Set(['request-answered', 'controller-stopped']);

export function createNotes(log: LogWriter, clock: Clock, say: (line: string) => void): Notes {
  let said: string | null = null;
  const note: Notes['note'] = (kind, text, values = {}) => {
    log.event({ atMs: clock.nowMs(), kind, text, values });
    if (!quiet.has(kind)) say(text);
  };
  return {
    note,
    watchLog() {
      const { remark } = log;
      if (remark === said) return;
      if (remark !== null) say(`nothing is logged: ${remark}`);
      else note('log-damaged', `Nothing was logged for a while: ${said}.`);
      said = remark;
    },
  };
}
