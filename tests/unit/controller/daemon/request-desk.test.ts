import { beforeEach, describe, expect, it } from 'vitest';
import { openRequestDesk, type RequestDesk } from '../../../../controller/daemon/request-desk.ts';
import { refusalByAge, sortRequest } from '../../../../controller/daemon/requests.ts';
import type { Answer } from '../../../../shared-types/engine.ts';
import type { RequestMessage } from '../../../../shared-types/messages.ts';

const request = (id: string): RequestMessage => ({
  schema: 1,
  id,
  issuedAtMs: 1000,
  lifeMs: 5000,
  who: 'somebody',
  operation: { kind: 'empty' },
});
const bytes = (content: unknown) =>
  Buffer.from(typeof content === 'string' ? content : JSON.stringify(content));
const accepted = (id: string): Answer => ({ id, accepted: true, code: 'accepted', text: 'Yes.' });

let desk: RequestDesk;
let sent: Answer[];
let ignored: string[];
let answered: number;
let woken: number;

beforeEach(() => {
  sent = [];
  ignored = [];
  answered = 0;
  woken = 0;
  desk = openRequestDesk({
    send: (answer) => sent.push(answer),
    onAnswered: () => answered++,
    onIgnored: (text) => ignored.push(text),
    onWaiting: () => woken++,
  });
});

describe('the request desk', () => {
  it('hands requests on in order, once each, and their answers back', () => {
    desk.hear(bytes(request('request-1')), false);
    desk.hear(bytes(request('request-2')), false);
    expect(woken).toBe(2);
    expect([desk.take()?.id, desk.take()?.id, desk.take()]).toEqual(['request-1', 'request-2', null]);
    desk.answer(request('request-1'), accepted('request-1'));
    expect([sent, answered, ignored]).toEqual([[accepted('request-1')], 1, []]);
  });

  it('does not hand on what was asked before', () => {
    desk.hear(bytes(request('request-1')), false);
    desk.hear(bytes(request('request-1')), false);
    expect(sent).toEqual([]);
    desk.answer(desk.take() as RequestMessage, accepted('request-1'));
    desk.hear(bytes(request('request-1')), false);
    expect(desk.take()).toBeNull();
    expect(sent.map(({ code }) => code)).toEqual(['accepted', 'repeated']);
    expect(answered).toBe(1);
  });

  it('refuses what a broker kept', () => {
    desk.hear(bytes(request('request-1')), true);
    expect(desk.take()).toBeNull();
    expect(sent).toMatchObject([{ id: 'request-1', accepted: false, code: 'retained' }]);
    expect(ignored).toHaveLength(1);
  });

  const malformed: [string, unknown, boolean][] = [
    ['no JSON', '{"id"', false],
    ['nothing', '', false],
    ['no object', '[]', false],
    ['another version', { ...request('request-1'), schema: 2 }, true],
    ['an unknown key', { ...request('request-1'), extra: 1 }, true],
    ['an unknown operation', { ...request('request-1'), operation: { kind: 'explode' } }, true],
    ['an absurd number', { ...request('request-1'), operation: { kind: 'rest', minutes: 1e300 } }, true],
    ['an endless life', { ...request('request-1'), lifeMs: 1e9 }, true],
    ['no id', { ...request('request-1'), id: undefined }, false],
    ['a wrong id', { ...request('request-1'), id: '../../x' }, false],
    ['far too much', `"${'x'.repeat(20_000)}"`, false],
  ];
  it.each(malformed)('ignores %s, tells the cause once and its asker if it can', (_, content, isTold) => {
    for (let again = 0; again < 5; again++) desk.hear(bytes(content), false);
    expect(desk.take()).toBeNull();
    expect(ignored).toHaveLength(1);
    expect(sent.map(({ code }) => code)).toEqual(isTold ? Array(5).fill('malformed') : []);
  });

  it('ignores bytes that are no text', () => {
    desk.hear(new Uint8Array([0x7b, 0xff, 0x7d]), false);
    expect([desk.take(), ignored.length]).toEqual([null, 1]);
  });

  it('lets only so many wait', () => {
    for (let number = 0; number < 100; number++) desk.hear(bytes(request(`request-${number}`)), false);
    let waited = 0;
    while (desk.take() !== null) waited++;
    expect(waited).toBe(16);
    expect(sent).toHaveLength(84);
    expect(sent[0]).toMatchObject({ id: 'request-16', accepted: false, code: 'not-possible-here' });
    desk.hear(bytes(request('request-16')), false);
    expect(desk.take()?.id).toBe('request-16');
  });
});

describe('a request', () => {
  it('is aged on the wall clock and sorted by who answers it', () => {
    expect(sortRequest(request('request-1'), 4000.4)).toEqual({
      kind: 'engine',
      request: { id: 'request-1', ageMs: 3000, lifeMs: 5000, operation: { kind: 'empty' } },
    });
    const operation = { kind: 'change-settings', settings: { startDifferenceK: 7 } } as const;
    expect(sortRequest({ ...request('request-1'), operation }, 500)).toEqual({
      kind: 'settings',
      ageMs: -500,
      operation,
    });
  });

  it.each([
    [5000, undefined],
    [5001, 'expired'],
    [-2000, undefined],
    [-2001, 'from-the-future'],
  ])('that is %i ms old is judged: %s', (ageMs, code) => {
    expect(refusalByAge(request('request-1'), ageMs)?.code).toBe(code);
  });
});
