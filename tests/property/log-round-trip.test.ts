import fc from 'fast-check';
import { expect, it, onTestFinished } from 'vitest';
import { openLogReader } from '../../controller/log/reader.ts';
import { openLogWriter } from '../../controller/log/writer.ts';
import { alarmCodes } from '../../shared-types/alarms.ts';
import { channels } from '../../shared-types/channels.ts';
import { phaseNames } from '../../shared-types/engine.ts';
import { type LogRecord, logRecordSchema } from '../../shared-types/log.ts';
import { sensorFaultSchema } from '../../shared-types/readings.ts';
import { reasonCodes } from '../../shared-types/reasons.ts';
import { temporaryFolder } from '../support/temporary.ts';

/** A physical value of either sign, with digits down to the last bit: a scaled integer over an odd number. */
const physical = fc.integer({ min: -3_000_000, max: 3_000_000 }).map((scaled) => scaled / 7000 + 0);
const ageMs = fc.integer({ min: 0, max: 10_000_000 });
const total = fc.integer({ min: 0, max: 2 ** 40 }).map((scaled) => scaled / 3);
const reading = fc.record(
  { value: fc.option(physical), ageMs, fault: fc.constantFrom(...sensorFaultSchema.options) },
  { requiredKeys: ['value', 'ageMs'] },
);
const fraction = fc.integer({ min: 0, max: 1000 }).map((scaled) => scaled / 1000);
const reasonCode = fc.constantFrom(...reasonCodes);
const lifeMs = fc.integer({ min: 1000, max: 60_000 });

const request = fc.record({
  id: fc.uuid(),
  ageMs: fc.integer({ min: -10_000, max: 100_000 }),
  lifeMs,
  operation: fc.oneof(
    fc.record({ kind: fc.constant('run-pump' as const), minutes: fc.integer({ min: 1, max: 120 }) }),
    fc.record({ kind: fc.constant('acknowledge' as const), alarm: fc.constantFrom(...alarmCodes) }),
  ),
});

const record: fc.Arbitrary<Omit<LogRecord, 'step' | 'run'>> = fc.record({
  siteRevision: fc.integer({ min: 1, max: 99 }),
  settingsRevision: fc.integer({ min: 1, max: 99 }),
  input: fc.record({
    nowMs: fc.integer({ min: 0, max: 4_000_000_000_000 }),
    elapsedMs: fc.option(ageMs),
    localDay: fc.constantFrom('2031-06-21', '2031-06-22', '1999-01-01'),
    readings: fc.dictionary(fc.constantFrom(...channels), reading) as fc.Arbitrary<
      LogRecord['input']['readings']
    >,
    feedback: fc.option(fc.record({ pumpFraction: fraction, drainOpen: fc.option(fc.boolean()), ageMs })),
    request: fc.option(request),
  }),
  outcome: fc.record({
    phase: fc.constantFrom(...phaseNames),
    outputs: fc.record(
      {
        pumpFraction: fraction,
        drainOpen: fc.boolean(),
        drainPumpOn: fc.boolean(),
        exchangerPumpOn: fc.boolean(),
        heatDumpOn: fc.boolean(),
      },
      { requiredKeys: ['pumpFraction', 'drainOpen', 'drainPumpOn', 'exchangerPumpOn'] },
    ),
    reasons: fc.record({ phase: reasonCode, pump: reasonCode, drain: reasonCode }),
    alarms: fc.uniqueArray(fc.constantFrom(...alarmCodes)),
    failed: fc.uniqueArray(fc.constantFrom(...channels)),
    total: fc.record({
      heatHomeJ: total,
      heatLostJ: total,
      electricityJ: total,
      pumpRunS: total,
      starts: fc.nat(),
      fills: fc.nat(),
    }),
  }),
});

const plain = (records: readonly LogRecord[]): LogRecord[] => JSON.parse(JSON.stringify(records));

it('any records come back as they were, in order, whatever the days they lie on', () => {
  const folder = temporaryFolder('round-trip');
  onTestFinished(folder.remove);
  let logs = 0;
  fc.assert(
    fc.property(fc.array(record, { minLength: 1, maxLength: 12 }), (contents) => {
      const records = plain(contents.map((content, index) => ({ run: 1, step: index + 1, ...content })));
      for (const one of records) logRecordSchema.parse(one);
      const path = folder.file(`${++logs}.sqlite`);
      const writer = openLogWriter(path);
      for (const one of records) writer.append(one);
      writer.close();
      const reader = openLogReader(path);
      expect([...reader.between(1, 0, 99)]).toStrictEqual(records);
      for (const { day, steps } of reader.days()) {
        const ofDay = records.filter(({ input }) => input.localDay === day);
        expect([...reader.records(day)]).toStrictEqual(ofDay);
        expect(steps).toBe(ofDay.length);
      }
      reader.close();
    }),
    { numRuns: 60 },
  );
});
