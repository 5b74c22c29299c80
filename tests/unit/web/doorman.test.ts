import { describe, expect, it } from 'vitest';
import { comesFromOwnPage, speaksToLoopback } from '../../../desktop/web/doorman.ts';

describe('speaksToLoopback', () => {
  it.each(['127.0.0.1:8080', 'localhost:8080', 'LOCALHOST:8080', '[::1]:8080', '127.0.0.1', 'localhost:80'])(
    'lets %s in',
    (host) => {
      expect(speaksToLoopback({ host })).toBe(true);
    },
  );

  it.each([
    'rebound.example:8080',
    'localhost.rebound.example',
    '127.0.0.1.rebound.example:8080',
    'rebound.example@127.0.0.1',
    '192.168.1.20:8080',
    '0.0.0.0:8080',
    '127.0.0.1:8080/',
    '127.0.0.1:8080#',
    '',
    '[::1',
    undefined,
  ])('keeps %s out', (host) => {
    expect(speaksToLoopback({ host })).toBe(false);
  });
});

describe('comesFromOwnPage', () => {
  const host = '127.0.0.1:8080';
  it.each([undefined, 'http://127.0.0.1:8080'])('lets the origin %s in', (origin) => {
    expect(comesFromOwnPage({ host, origin })).toBe(true);
  });

  it.each([
    'http://127.0.0.1:8081',
    'http://127.0.0.1',
    'http://localhost:8080',
    'http://127.0.0.1:8080.rebound.example',
    'http://rebound.example',
    'null',
    'file://',
    '',
  ])('keeps the origin %s out', (origin) => {
    expect(comesFromOwnPage({ host, origin })).toBe(false);
  });
});
