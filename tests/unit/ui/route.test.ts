import { expect, test } from 'vitest';
import { formatRoute, parseRoute, type Route } from '../../../desktop/ui/shell/route.ts';

const routes: readonly Route[] = [
  { screen: 'live' },
  { screen: 'days', day: null },
  { screen: 'days', day: '2031-06-21' },
  { screen: 'replay', day: null },
  { screen: 'replay', day: '2031-06-21' },
  { screen: 'setpoints' },
];

test.each(routes)('$screen $day finds its way to the address and back', (route) => {
  expect(parseRoute(formatRoute(route))).toEqual(route);
});

test.each(['', '#', '#/', '#/nowhere', '#/live/2031-06-21', '#/../days', '#/%', '#/setpoints/2031-06-21'])(
  '%s is Live',
  (hash) => {
    expect(parseRoute(hash)).toEqual({ screen: 'live' });
  },
);

test('a day that is none is no day', () => {
  expect(parseRoute('#/days/yesterday')).toEqual({ screen: 'days', day: null });
  expect(parseRoute('#/days/2031-06-21x')).toEqual({ screen: 'days', day: null });
});
