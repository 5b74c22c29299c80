import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostPayloadBytes, readMessage } from '../../../desktop/host/message-reader.ts';
import { bytes, siteMessage, siteName, snapshot } from './samples.ts';

const topic = (kind: string, site = siteName) => `flatwater/${site}/${kind}`;

const withSequence = (text: string) =>
  new TextEncoder().encode(JSON.stringify(snapshot()).replace('"sequence":1', `"sequence":${text}`));

describe('readMessage', () => {
  it('reads what a controller sends', () => {
    expect(readMessage(topic('snapshot'), bytes(snapshot()))).toEqual({
      kind: 'snapshot',
      site: siteName,
      message: snapshot(),
    });
    expect(readMessage(topic('site'), bytes(siteMessage())).kind).toBe('site');
    expect(readMessage(topic('status'), bytes({ schema: 1, state: 'lost' })).kind).toBe('status');
    const answer = { id: 'abcdefgh', accepted: true, code: 'accepted', text: 'Running.' };
    expect(readMessage(topic('answer'), bytes({ schema: 1, answer })).kind).toBe('answer');
  });

  it('tells that a retained message was taken back', () => {
    expect(readMessage(topic('snapshot'), new Uint8Array())).toEqual({
      kind: 'cleared',
      site: siteName,
      what: 'snapshot',
    });
  });

  it.each([
    ['no JSON', topic('status'), new TextEncoder().encode('{"schema":1,'), 'not JSON'],
    ['no UTF-8', topic('status'), Uint8Array.of(0x22, 0xff, 0x22), 'not JSON'],
    ['another schema version', topic('status'), bytes({ schema: 2, state: 'lost' }), 'schema'],
    ['a key too many', topic('status'), bytes({ schema: 1, state: 'lost', why: 'x' }), 'why'],
    ['an infinite number', topic('snapshot'), withSequence('1e400'), 'sequence'],
    ['another site inside', topic('snapshot'), bytes(snapshot({ site: 'elsewhere' })), 'elsewhere'],
    ['another site inside the site', topic('site', 'elsewhere'), bytes(siteMessage()), siteName],
    ['a payload too long', topic('status'), new Uint8Array(mostPayloadBytes + 1), 'longer'],
    ['an empty answer', topic('answer'), new Uint8Array(), 'empty'],
    ['an unknown topic', topic('weather'), bytes({}), 'topic'],
    ['a property of every object as topic', topic('constructor'), bytes({}), 'topic'],
    ['a site name that is a path', 'flatwater/../snapshot', bytes(snapshot()), 'topic'],
    ['a longer topic', `${topic('snapshot')}/x`, bytes(snapshot()), 'topic'],
  ])('finds %s malformed', (_what, at, payload, reason) => {
    expect(readMessage(at, payload)).toEqual({ kind: 'malformed', reason: expect.stringContaining(reason) });
  });

  it('never throws, whatever comes', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.constantFrom('snapshot', 'status', 'site', 'answer').map((kind) => topic(kind)),
        ),
        fc.oneof(
          fc.uint8Array({ maxLength: 200 }),
          fc.json().map((text) => new TextEncoder().encode(text)),
        ),
        (at, payload) => {
          expect(readMessage(at, payload).kind).toMatch(/malformed|cleared/);
        },
      ),
    );
  });
});
