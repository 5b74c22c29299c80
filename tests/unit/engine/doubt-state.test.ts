import { describe, expect, it } from 'vitest';
import { initialState, reviveState } from '../../../controller/engine/index.ts';
import { minutes } from './doubt-rig.ts';
import { circulatingLoop, disturb, makeSite } from './rig.ts';

const doubt = { cause: 'disagrees', by: 'inlet-source', provenMs: 5 };
const watched = {
  ...initialState(),
  watch: {
    lookedMs: 9,
    darkMs: 3,
    evidence: { 'store-order': -4 },
    doubts: { panInletC: doubt, ambientC: { cause: 'noisy', by: 'itself', provenMs: 1 } },
    still: { panSheetC: { lowC: 3, highC: 9 } },
    nightDewC: 7,
  },
};

describe('the memory of watched sensors', () => {
  it('is taken up as it was', () => {
    expect(reviveState(watched)).toEqual(watched);
    expect(reviveState(disturb(watched, ['watch', 'darkMs'], null))).toBeDefined();
    for (const cause of ['stuck', 'noisy', 'disagrees'])
      expect(reviveState(disturb(watched, ['watch', 'doubts', 'panInletC', 'cause'], cause))).toBeDefined();
  });

  it.each([
    [['watch'], null],
    [['watch', 'lookedMs'], null],
    [['watch', 'darkMs'], 'dark'],
    [['watch', 'evidence'], []],
    [['watch', 'evidence', 'store-order'], 'much'],
    [['watch', 'evidence', 'gossip'], 3],
    [['watch', 'doubts'], null],
    [['watch', 'doubts', 'panInletC'], null],
    [['watch', 'doubts', 'panInletC', 'cause'], 'jumped'],
    [['watch', 'doubts', 'panInletC', 'by'], 'gossip'],
    [['watch', 'doubts', 'panInletC', 'provenMs'], null],
    [['watch', 'doubts', 'nobody'], doubt],
    [['watch', 'nightDewC'], 'dew'],
    [['watch', 'still'], 4],
    [['watch', 'still', 'panSheetC'], null],
    [['watch', 'still', 'panSheetC', 'lowC'], null],
    [['watch', 'still', 'panSheetC', 'highC'], 'high'],
    [['watch', 'still', 'nobody'], { lowC: 1, highC: 2 }],
  ] as const)('with %j as %j is not taken up', (path, value) => {
    expect(reviveState(disturb(watched, path, value))).toBeUndefined();
  });

  it.each([
    ['changedMs', null],
    ['scatter', -1],
    ['scatter', null],
  ])('is not taken up with %s of a sensor as %j', (name, value) => {
    const { state } = circulatingLoop(makeSite('drain-valve'));
    expect(reviveState(state)).toBeDefined();
    expect(reviveState(disturb(state, ['sensing', 'panOutletC', name], value))).toBeUndefined();
  });

  it('changes once a minute', () => {
    const loop = minutes(circulatingLoop(makeSite('drain-valve')), 2);
    const { watch } = loop.state;
    expect(loop.run(55).state.watch).toBe(watch);
    expect(loop.run(5).state.watch).not.toBe(watch);
  });
});
