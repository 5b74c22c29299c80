import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { initialState, reviveState, step, stepOn } from '../../../controller/engine/index.ts';
import { doubtMs } from '../../../controller/engine/sense/doubt/apply.ts';
import type { EngineInput } from '../../../shared-types/engine.ts';
import { defaultSettings } from '../../../shared-types/settings.ts';
import {
  allSensors,
  circulatingLoop,
  disturb,
  Loop,
  makeSite,
  quickSettings,
  siteKinds,
} from '../../unit/engine/rig.ts';
import { settingsDraw, siteDraw, stretchesDraw } from './draws.ts';
import { walk } from './walk.ts';

const site = makeSite('drain-valve', allSensors);
const circulating = circulatingLoop(site).run(60).state;
const emptyInput = {
  nowMs: 0,
  elapsedMs: 5000,
  localDay: '2031-06-21',
  readings: {},
  feedback: null,
  request: null,
};

/** Readings of which nobody can tell how old they are. */
const ageless = fc.record(
  Object.fromEntries(
    allSensors.map((channel) => [
      channel,
      fc.record({ value: fc.constantFrom(20, 30), ageMs: fc.constantFrom(null, -1, '0', {}, true) }),
    ]),
  ),
);

/** Some path to a value inside the state. */
const pathDraw = fc.constantFrom(...Object.keys(circulating)).chain((key) => {
  const inner = (circulating as unknown as Record<string, unknown>)[key];
  const keys = typeof inner === 'object' && inner !== null ? Object.keys(inner) : [];
  return keys.length === 0
    ? fc.constant([key])
    : fc.oneof(
        fc.constant([key]),
        fc.constantFrom(...keys).map((name) => [key, name]),
      );
});

describe('any JSON', () => {
  it('as a state never throws, and without readings the outputs are safe', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.jsonValue(),
          pathDraw.chain((path) => fc.jsonValue().map((value) => disturb(circulating, path, value))),
        ),
        (state) => {
          const { decision, state: next } = step(state as never, emptyInput, site, defaultSettings);
          expect(decision.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
          expect(reviveState(JSON.parse(JSON.stringify(next)))).toEqual(next);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('as an input never throws and runs no pump', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.jsonValue(),
          fc.record({
            elapsedMs: fc.oneof(fc.constant(5000), fc.jsonValue()),
            readings: fc.oneof(fc.jsonValue(), ageless),
            request: fc.jsonValue(),
            feedback: fc.jsonValue(),
          }),
        ),
        fc.constantFrom(initialState(), circulating),
        (input, state) => {
          const { decision, state: next } = step(
            state,
            input as unknown as EngineInput,
            site,
            defaultSettings,
          );
          expect(reviveState(JSON.parse(JSON.stringify(next)))).toEqual(next);
          expect(decision.outputs).toMatchObject({ pumpFraction: 0, drainOpen: true });
          expect(decision.reasons.phase.code).not.toBe('internal-error');
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('no phase is a trap', () => {
  /** Fine weather, and a pan whose level follows what the loop does. */
  function harvests(loop: Loop): boolean {
    for (let atS = 0; atS < 5 * 3600; atS += 5) {
      const before = loop.state.phase.name;
      const pumping = before === 'filling' || before === 'circulating';
      const full = before === 'circulating' || before === 'resting' || before === 'filling';
      loop.set({
        panSheetC: 45,
        panOutletC: 45,
        panInletC: 20,
        flowLMin: pumping ? 20 : 0,
        panLevelMm: full ? 40 : 0,
      });
      loop.step();
      if (loop.phase === 'circulating') return true;
    }
    return false;
  }

  /** Without a frost season, a pan that cannot be emptied waits for a week without a cold night. */
  function passWeek(loop: Loop): void {
    loop.set({ ambientC: 20 });
    for (let day = 10; day < 19; day++) {
      loop.localDay = `2032-06-${day}`;
      loop.run(20);
    }
  }

  /** A sensor that was proven wrong is on trial again after a day without new proof: none is waited for longer. */
  function passDoubts(loop: Loop): void {
    if (Object.keys(loop.state.watch.doubts).length > 0) loop.run(doubtMs / 1000, 10);
  }

  it('whatever came before, fine weather and an operator set it going again', () => {
    fc.assert(
      fc.property(
        stretchesDraw,
        siteDraw,
        settingsDraw,
        fc.constantFrom(...siteKinds),
        (stretches, drawn, _settings, kind) => {
          const own = kind === 'drain-pump' ? makeSite(kind, allSensors) : drawn;
          const loop = new Loop(own, quickSettings);
          loop.step();
          loop.state = walk(stretches, own, quickSettings).at(-1)?.state ?? loop.state;
          loop.ask({ kind: 'automatic' }, { id: 'back-to-work' });
          passWeek(loop);
          passDoubts(loop);
          expect(harvests(loop)).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('a state that is not looked at again', () => {
  it('leads to the same step, so that simulations and replays decide as the controller does', () => {
    fc.assert(
      fc.property(stretchesDraw, siteDraw, settingsDraw, (stretches, drawn, settings) => {
        for (const { before, input, state, decision } of walk(stretches, drawn, settings))
          expect(stepOn(before, input, drawn, settings)).toEqual({ state, decision });
      }),
      { numRuns: 100 },
    );
  });

  it('never throws either, whatever the input is', () => {
    fc.assert(
      fc.property(fc.anything(), (input) => {
        const { outputs } = stepOn(circulating, input as EngineInput, site, defaultSettings).decision;
        expect(typeof outputs.pumpFraction).toBe('number');
      }),
      { numRuns: 500 },
    );
  });
});
