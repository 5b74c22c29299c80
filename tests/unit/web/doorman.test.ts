import { hostname } from 'node:os';
import { describe, expect, it } from 'vitest';
import {
  comesFromOwnPage,
  createDoorman,
  plain,
  postedByOwnPage,
  speaksToUs,
} from '../../../desktop/web/doorman.ts';

describe('speaksToUs', () => {
  it.each(['127.0.0.1:8080', 'localhost:8080', 'LOCALHOST:8080', '[::1]:8080', '127.0.0.1', 'localhost:80'])(
    'lets %s in',
    (host) => {
      expect(speaksToUs({ host })).toBe(true);
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
    expect(speaksToUs({ host })).toBe(false);
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

describe('a doorman beyond loopback', () => {
  const arriving = (host: string, localAddress = '192.168.7.20') =>
    ({ headers: { host }, socket: { localAddress } }) as never;
  const machine = hostname();
  const doorman = createDoorman('0.0.0.0', ['Heater.Example']);

  it.each([
    '192.168.7.20:8080',
    '127.0.0.1:8080',
    `${machine}:8080`,
    `${machine.replace(/\..*/, '')}.local`,
    'heater.example:8080',
    'HEATER.example',
  ])('lets %s in', (host) => {
    expect(doorman(arriving(host))).toBe(true);
  });

  it.each(['rebound.example:8080', '192.168.7.21:8080', 'elsewhere.local', '0.0.0.0:8080'])(
    'keeps %s out',
    (host) => {
      expect(doorman(arriving(host))).toBe(false);
    },
  );

  it('knows an address of IPv4 that came in at a socket of both families', () => {
    expect(doorman(arriving('192.168.7.20', '::ffff:192.168.7.20'))).toBe(true);
    expect(plain('::ffff:192.168.7.20')).toBe('192.168.7.20');
    expect(plain('fd00::20')).toBe('fd00::20');
    expect(doorman(arriving('[fd00::20]:8080', 'fd00::20'))).toBe(true);
  });

  it('knows the name that it listens at', () => {
    expect(createDoorman('heater.example', [])(arriving('heater.example'))).toBe(true);
    expect(createDoorman('0.0.0.0', [])(arriving('heater.example'))).toBe(false);
  });

  it('lets only loopback names in at a loopback address, and those that a proxy was given', () => {
    const closed = createDoorman('127.0.0.1', ['Heater.Example']);
    expect(closed(arriving('heater.example'))).toBe(true);
    expect(closed(arriving('localhost:8080'))).toBe(true);
    for (const host of ['rebound.example', '192.168.7.20', machine])
      expect(closed(arriving(host))).toBe(false);
    expect(createDoorman('127.0.0.1', [])(arriving('heater.example'))).toBe(false);
  });
});

describe('postedByOwnPage', () => {
  it.each([
    ['http://127.0.0.1:8080', true],
    ['http://127.0.0.1:8081', false],
    ['http://rebound.example', false],
    ['null', false],
    [undefined, false],
  ])('of the origin %s is %s', (origin, own) => {
    expect(postedByOwnPage({ host: '127.0.0.1:8080', origin })).toBe(own);
  });
});
