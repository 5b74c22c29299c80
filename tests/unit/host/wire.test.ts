import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerCall, answerText } from '../../../desktop/host/wire.ts';
import { type MonitorApi, monitorWireSchema } from '../../../shared-types/monitor-api.ts';

const api = (call: () => unknown): MonitorApi => ({
  call: async () => (await call()) as never,
  listen: () => () => undefined,
});
const quiet = api(() => ({ ok: true, result: [] }));

describe('answerCall', () => {
  it('answers under the id of the call', async () => {
    expect(await answerCall(quiet, { id: 7, method: 'sites', params: {} })).toEqual({
      id: 7,
      ok: true,
      result: [],
    });
  });

  it('hands a problem on, and nothing beside it', async () => {
    const problem = { severity: 'note', text: 'Nothing yet.' };
    const talkative = api(() => ({ ok: false, problem, stack: 'at somewhere' }));
    expect(await answerCall(talkative, { id: 1, method: 'sites', params: {} })).toEqual({
      id: 1,
      ok: false,
      problem,
    });
  });

  it('puts into words what the host throws', async () => {
    const broken = api(() => Promise.reject(new Error('out of order')));
    expect(await answerCall(broken, { id: 3, method: 'sites', params: {} })).toEqual({
      id: 3,
      ok: false,
      problem: { severity: 'error', text: expect.stringContaining('out of order') },
    });
  });

  it.each([
    ['an unknown method', { id: 4, method: 'shutdown', params: {} }, 4],
    ['a method that every object has', { id: 4, method: 'constructor', params: {} }, 4],
    ['a key too many', { id: 4, method: 'sites', params: {}, sudo: true }, 4],
    ['an id that is no integer', { id: 4.5, method: 'sites', params: {} }, -1],
    ['nothing at all', undefined, -1],
  ])('refuses %s in words', async (_what, raw, id) => {
    expect(await answerCall(quiet, raw)).toMatchObject({ id, ok: false, problem: { severity: 'error' } });
  });

  it('answers anything with something that the screens understand', async () => {
    await fc.assert(
      fc.asyncProperty(fc.anything({ withNullPrototype: true }), async (raw) => {
        expect(monitorWireSchema.safeParse(await answerCall(quiet, raw)).success).toBe(true);
      }),
    );
    await fc.assert(
      fc.asyncProperty(fc.string(), async (text) => {
        expect(monitorWireSchema.safeParse(await answerText(quiet, text)).success).toBe(true);
      }),
    );
  });
});
