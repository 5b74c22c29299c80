import type { DecidedRecord, LogRecord } from '../../shared-types/log.ts';

/**
 * A logged step as one that a controller decided.
 *
 * @throws RangeError for a step of another logger, in which no rule of ours decided anything.
 */
export function decided(record: LogRecord): DecidedRecord {
  if (isDecided(record)) return record;
  throw new RangeError(
    `${record.input.localDay} was taken in from another logger: nothing was decided then that could be decided again`,
  );
}

/** Phase and reasons of a step are all known, or none is. */
const isDecided = (record: LogRecord): record is DecidedRecord => record.outcome.phase !== 'unknown';
