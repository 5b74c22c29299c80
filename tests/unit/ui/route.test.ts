import { expect, test } from 'vitest';
import { formatRoute, parseRoute, type Route } from '../../../desktop/ui/shell/route.ts';
import { siteOf, withSite } from '../../../desktop/ui/shell/site-address.ts';

const routes: readonly Route[] = [
  { screen: 'live' },
  { screen: 'days', day: null },
  { screen: 'days', day: '2031-06-21' },
  { screen: 'replay', day: null },
  { screen: 'replay', day: '2031-06-21' },
  { screen: 'alarms' },
  { screen: 'site' },
  { screen: 'setpoints' },
  { screen: 'pan-check' },
];

test.each(routes)('$screen $day finds its way to the address and back', (route) => {
  expect(parseRoute(formatRoute(route))).toEqual(route);
});

test.each([
  '',
  '#',
  '#/',
  '#/nowhere',
  '#/live/2031-06-21',
  '#/alarms/2031-06-21',
  '#/site/x',
  '#/setpoints/2031-06-21',
  '#/pan-check/2031-06-21',
  '#/../days',
  '#/%',
])('%s is Live', (hash) => {
  expect(parseRoute(hash)).toEqual({ screen: 'live' });
});

test('a day that is none is no day', () => {
  expect(parseRoute('#/days/yesterday')).toEqual({ screen: 'days', day: null });
  expect(parseRoute('#/days/2031-06-21x')).toEqual({ screen: 'days', day: null });
});

test('a place at a site has the site in its address, and is found without it', () => {
  for (const route of routes) {
    const address = formatRoute(route, 'north-roof');
    expect(address).toBe(`${formatRoute(route)}?site=north-roof`);
    expect(parseRoute(address)).toEqual(route);
    expect(siteOf(address)).toBe('north-roof');
    expect(siteOf(formatRoute(route))).toBeNull();
  }
});

test.each([
  ['', '#/live?site=b'],
  ['#/days/2031-06-21', '#/days/2031-06-21?site=b'],
  ['#/days?site=a', '#/days?site=b'],
  ['#/live?site=a&site=c&x=1', '#/live?site=b&x=1'],
])('%j at another site is %s', (hash, address) => {
  expect(withSite(hash, 'b')).toBe(address);
});

test('a strange name in the address stays a name', () => {
  for (const name of ['<img src=x>', 'a&site=b', '../x', '%', 'a?b', 'ü'])
    expect(siteOf(withSite('#/live', name))).toBe(name);
  expect(siteOf('#/live?site=')).toBeNull();
  expect(siteOf('#/live?other=1')).toBeNull();
});
