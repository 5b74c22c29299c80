import { describe, expect, it } from 'vitest';
import { defaultSettings } from '../../../../shared-types/settings.ts';
import { fakeEngine, fakeHeatJ, fakeSafeOutputs } from '../../../support/fake-engine.ts';
import { manualClock } from '../../../support/manual-clock.ts';
import { read, withLog } from '../log/log-rig.ts';
import { stepperRig } from './stepper-rig.ts';

const day = '2031-06-21';
/** What the fake engine counts in a step of five seconds at the default start difference [J]. */
const heatOfStepJ = 5000 * defaultSettings.startDifferenceK;

describe('the stepper', () => {
  it('puts out what was decided, numbered and with its expiry', () =>
    withLog((path) => {
      const { steps, link, log } = stepperRig(path);
      steps(2);
      expect(link.applied).toEqual(
        [1, 2].map((sequence) => ({
          schema: 1,
          sequence,
          pumpFraction: 1,
          drainOpen: false,
          drainPumpOn: false,
          exchangerPumpOn: false,
          expiresInMs: 60_000,
        })),
      );
      log.close();
    }));

  it('tells what the device said, and how long ago the outputs last left', () =>
    withLog((path) => {
      const { steps, stepper, link, exchanges, clock, log } = stepperRig(path);
      const readings = { panOutletC: { value: 41, ageMs: 12 } };
      const feedback = { pumpFraction: 1, drainOpen: false, ageMs: 3 };
      link.connect(false);
      link.hear(readings, feedback);
      steps(1);
      link.connect(true);
      steps(1);
      // Up all the same: a device of another version of the protocol is told nothing.
      link.connect(true, false);
      clock.advance(2000);
      stepper.step();
      expect(exchanges).toEqual([
        { readings, feedback, renewedAgeMs: null },
        { readings, feedback, renewedAgeMs: 0 },
        { readings, feedback, renewedAgeMs: 7000 },
      ]);
      log.close();
    }));

  it('logs what it was given, the first step not knowing how long nobody looked', () =>
    withLog((path) => {
      const { steps, link, log, run } = stepperRig(path);
      link.hear({ panOutletC: { value: 41, ageMs: 12.3 } }, { pumpFraction: 1, drainOpen: false, ageMs: 3 });
      steps(3);
      log.close();
      const records = read(path, (reader) => [...reader.records(day)]);
      expect(records.map(({ step, run, input }) => [run, step, input.elapsedMs])).toEqual([
        [run.run, 1, null],
        [run.run, 2, 5000],
        [run.run, 3, 5000],
      ]);
      expect(records[0]?.input.readings).toEqual({ panOutletC: { value: 41, ageMs: 12 } });
      expect(records[2]?.outcome.total.heatHomeJ).toBe(2 * heatOfStepJ);
    }));

  it('goes on after any end as if there had been none', () =>
    withLog((path) => {
      const clock = manualClock();
      for (const isClean of [true, false, false, true]) {
        const rig = stepperRig(path, { clock });
        rig.steps(200);
        if (isClean) rig.stepper.end();
        rig.log.close();
      }
      const last = stepperRig(path, { clock });
      expect(fakeHeatJ(last.run.state)).toBe(4 * 199 * heatOfStepJ);
      last.log.close();
    }));

  it('continues with the settings that were in force', () =>
    withLog((path) => {
      const first = stepperRig(path);
      first.steps(2);
      first.ask({ kind: 'change-settings', settings: { startDifferenceK: 8 } });
      first.steps(2);
      first.log.close();
      const second = stepperRig(path, { clock: first.clock });
      expect(second.run.settings.startDifferenceK).toBe(8);
      expect(fakeHeatJ(second.run.state)).toBe(heatOfStepJ + 2 * 5000 * 8);
      second.log.close();
    }));

  it('begins anew when the saved state is of another version, and says so', () =>
    withLog((path) => {
      const first = stepperRig(path);
      first.steps(3);
      first.log.close();
      const second = stepperRig(path, { engine: fakeEngine({ reviveState: () => undefined }) });
      expect(fakeHeatJ(second.run.state)).toBe(0);
      second.log.close();
      expect(read(path, (reader) => reader.events(1)[0]?.text)).toMatch(/another version/);
    }));

  it('saves a state at the beginning of a day, for a replay to begin at', () =>
    withLog((path) => {
      const rig = stepperRig(path, { clock: manualClock(Date.UTC(2031, 5, 21, 23, 59, 50)) });
      rig.steps(5);
      rig.log.close();
      read(path, (reader) => {
        const [first] = [...reader.records('2031-06-22')];
        expect(first?.step).toBe(3);
        expect(reader.stateBefore(1, 2)).toMatchObject({ step: 2, state: { heatJ: heatOfStepJ } });
        expect(reader.stateBefore(1, 1)).toMatchObject({ step: 0 });
      });
    }));

  it('answers a request with the age that the wall clock tells', () =>
    withLog((path) => {
      const { ask, steps, answers, log } = stepperRig(path);
      ask({ kind: 'empty' }, 1500);
      steps(1);
      expect(answers).toMatchObject([{ id: 'request-1', accepted: true, code: 'accepted' }]);
      expect(Number(answers[0]?.text.replace('aged ', ''))).toBeGreaterThanOrEqual(1500);
      log.close();
    }));

  it('takes new settings at the next step, whole or not at all', () =>
    withLog((path) => {
      const { ask, steps, answers, log } = stepperRig(path);
      steps(1);
      ask({ kind: 'change-settings', settings: { startDifferenceK: 8 } });
      ask({ kind: 'change-settings', settings: { stopDifferenceK: 9, frostReleaseC: 4 } });
      ask({ kind: 'change-settings', settings: { startDifferenceK: 8 } });
      ask({ kind: 'change-settings', settings: { startDifferenceK: 7 } }, 6000);
      ask({ kind: 'change-settings', settings: { startDifferenceK: 7 } }, -6000);
      ask({ kind: 'empty' });
      steps(1);
      expect(answers.map(({ code }) => code)).toEqual([
        'accepted',
        'settings-refused',
        'nothing-to-do',
        'expired',
        'from-the-future',
        'accepted',
      ]);
      expect(answers[1]?.text).toMatch(/stop difference.*frost release/);
      log.close();
      read(path, (reader) => {
        const revisions = [...reader.records(day)].map(({ settingsRevision }) => settingsRevision);
        expect(revisions).toEqual([1, 2]);
        expect(reader.settings(2)?.startDifferenceK).toBe(8);
        const changes = reader.events(9).filter(({ kind }) => kind === 'settings-changed');
        expect(changes).toMatchObject([
          {
            text: `a test changed start difference from ${defaultSettings.startDifferenceK} to 8 K.`,
            values: { startDifferenceK: 8, revision: 2 },
          },
        ]);
      });
    }));

  it('is safe while the engine fails, says so once, and recovers', () =>
    withLog((path) => {
      const good = fakeEngine();
      let failing = false;
      const engine = fakeEngine({
        step(...given) {
          if (failing) throw new Error('on purpose');
          return good.step(...given);
        },
      });
      const { ask, steps, link, failures, answers, decisions, log } = stepperRig(path, { engine });
      steps(2);
      failing = true;
      ask({ kind: 'empty' });
      steps(3);
      expect(link.applied.slice(2)).toEqual(
        [3, 4, 5].map((sequence) => expect.objectContaining({ sequence, ...fakeSafeOutputs })),
      );
      expect(failures).toEqual(['on purpose']);
      expect(answers).toMatchObject([{ accepted: false, code: 'not-possible-here' }]);
      expect(decisions).toHaveLength(2);
      failing = false;
      steps(1);
      expect(link.applied.at(-1)?.pumpFraction).toBe(1);
      log.close();
      const elapsed = read(path, (reader) => [...reader.records(day)].map(({ input }) => input.elapsedMs));
      expect(elapsed).toEqual([null, 5000, 20_000]);
    }));

  it('controls on when its log cannot be written', () =>
    withLog((path) => {
      const holder = stepperRig(path);
      const { steps, link, log } = stepperRig(path);
      steps(3);
      expect(log.writable).toBe(false);
      expect(link.applied.map(({ pumpFraction }) => pumpFraction)).toEqual([1, 1, 1]);
      holder.log.close();
    }));

  it('ends with safe outputs', () =>
    withLog((path) => {
      const { stepper, steps, link, log } = stepperRig(path);
      steps(1);
      stepper.end();
      log.close();
      expect(link.applied.at(-1)).toMatchObject({ sequence: 2, ...fakeSafeOutputs });
    }));
});
