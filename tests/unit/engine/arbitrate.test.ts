import { describe, expect, it } from 'vitest';
import { arbitrate, hazardCommand } from '../../../controller/engine/arbitrate.ts';
import { initialState } from '../../../controller/engine/state.ts';
import { situationOf } from './situations.ts';

const even = { panOutletC: 20, panSheetC: 20, storeBottomC: 20, storeTopC: 20 };
const phase = { name: 'resting', sinceMs: 0 } as const;

describe('the protection that holds', () => {
  it('is none in a calm loop', () => {
    expect(hazardCommand(situationOf({ state: { phase }, level: 'full', told: even }))).toBeNull();
  });

  it('is urgent, and the most severe: frost before a hot store', () => {
    const frost = { ...initialState().frost, latched: 'frost-measured' } as const;
    const heat = { ...initialState().heat, storeFull: true };
    const hot = { ...even, storeTopC: 75 };
    const cold = situationOf({ state: { phase, frost, heat }, level: 'full', told: hot });
    expect(hazardCommand(cold)).toMatchObject({
      goal: 'empty',
      cause: { code: 'frost-waiting-release' },
      urgent: true,
      by: 'hazard',
      hazard: { code: 'frost-waiting-release' },
    });
    const warm = situationOf({ state: { phase, heat }, level: 'full', told: hot });
    expect(hazardCommand(warm)).toMatchObject({ goal: 'rest', cause: { code: 'store-limit' }, by: 'hazard' });
  });
});

describe('the wish of the loop', () => {
  it('comes after a store that is to be cooled, and that before a pump that is to be turned', () => {
    const heat = { ...initialState().heat, cooling: true };
    const pump = { sinceMs: -1e9, startsMs: [], exercising: false };
    const codeOf = (state: object) =>
      arbitrate(situationOf({ state: { phase, ...state }, level: 'full', told: even }), null).cause.code;
    expect(codeOf({ heat, pump })).toBe('cooling-store');
    expect(codeOf({ pump })).toBe('exercising-pump');
    expect(codeOf({})).not.toMatch(/cooling|exercising/);
  });
});
