import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openLogReader } from '../../../controller/log/reader.ts';
import { dayTable } from '../../../desktop/ui/days/export-tables.ts';
import { csvText } from '../../../desktop/ui/format/csv.ts';
import { channelMeaning, channels } from '../../../shared-types/channels.ts';
import type { DayCurves } from '../../../shared-types/log.ts';
import { importRig, leastMap, lines } from '../../unit/sim/import/import-rig.ts';

const startMs = Date.UTC(2031, 5, 20, 22);

/** Rows of different instants over two days: minutes from the start, with a value and the pump. */
const table = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 0, max: 2880 }), fc.integer({ min: 0, max: 800 }), fc.boolean()), {
    selector: ([minute]) => minute,
    minLength: 1,
    maxLength: 40,
  })
  .map((rows) => rows.toSorted(([a], [b]) => a - b));

const text = (rows: readonly (readonly [number, number, boolean])[]) =>
  lines(
    'Time,Roof,Pump',
    ...rows.map(([minute, tenths, on]) =>
      [new Date(startMs + minute * 60_000).toISOString(), tenths / 10, on ? 'on' : 'off'].join(),
    ),
  );

const withRig = async <Result>(work: (rig: ReturnType<typeof importRig>) => Promise<Result>) => {
  const rig = importRig();
  try {
    return await work(rig);
  } finally {
    rig.folder.remove();
  }
};

test('rows in any order, some of them twice, give the same days', async () => {
  await fc.assert(
    fc.asyncProperty(
      table.chain((rows) =>
        fc.tuple(
          fc.constant(rows),
          fc.shuffledSubarray([...rows, ...rows], { minLength: rows.length, maxLength: 2 * rows.length }),
        ),
      ),
      async ([rows, mixed]) => {
        const all = [...mixed, ...rows.filter((row) => !mixed.includes(row))];
        const days = await Promise.all(
          [rows, all].map((some) =>
            withRig(async (rig) => {
              const { report } = await rig.takeIn(text(some));
              expect(report?.misses.contested).toBeUndefined();
              return { records: rig.records(), days: rig.read((reader) => reader.days()) };
            }),
          ),
        );
        expect(days[1]).toEqual(days[0]);
      },
    ),
    { numRuns: 12 },
  );
}, 60_000);

test('a file in pieces that overlap gives the same days as the whole', async () => {
  await fc.assert(
    fc.asyncProperty(
      table,
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 0, max: 10 }),
      async (rows, cut, over) => {
        const whole = await withRig(async (rig) => {
          await rig.takeIn(text(rows));
          return rig.records();
        });
        const pieces = await withRig(async (rig) => {
          for (const part of [rows.slice(Math.max(0, cut - over)), rows.slice(0, cut)])
            if (part.length > 0) await rig.takeIn(text(part));
          return rig.records();
        });
        expect(pieces).toEqual(whole);
      },
    ),
    { numRuns: 8 },
  );
}, 60_000);

test('a day of our own that was saved as CSV comes back as it was', async () => {
  await withRig(async (rig) => {
    const atMs = Array.from({ length: 50 }, (_, step) => startMs + step * 10_000);
    const series = Object.fromEntries(
      channels.map((channel, index) => [
        channel,
        atMs.map((_, step) => (step === 3 ? null : 50 + ((index + step) % 7))),
      ]),
    );
    const humidity = { humidityFraction: atMs.map((_, step) => (step % 10) / 10) };
    const curves: DayCurves = {
      ...{ day: '2031-06-20', atMs, series: { ...series, ...humidity }, phases: [], events: [] },
      pumpFraction: atMs.map((_, step) => (step % 3) / 2),
      heatTodayJ: atMs.map(() => null),
    };
    const file = csvText(dayTable(curves, 'Etc/UTC', { temperature: 'F', heat: 'kWh' }));
    const units = { C: 'F', WM2: 'W/m2', Ms: 'm/s', Fraction: '%', LMin: 'L/min', Mm: 'mm', W: 'W' } as const;
    const head = file.split('\r\n')[0]?.split(',') ?? [];
    const { report, faults } = await rig.takeIn(file, {
      ...leastMap,
      time: { column: 'Time (UTC)' },
      values: channels.map((channel) => {
        const { title, unit } = channelMeaning[channel];
        const column = head.find((name) => name.startsWith(`${title} [`)) ?? title;
        return { column, channel, unit: units[unit] };
      }),
      pump: { column: 'Pump [%]', unit: '%' },
    });
    expect(faults).toEqual([]);
    expect(report?.stepsAdded).toBe(50);
    expect(report?.misses).toEqual({});
    const reader = openLogReader(rig.path);
    const back = reader.day('2031-06-20');
    reader.close();
    expect(back.atMs).toEqual(atMs);
    expect(back.pumpFraction).toEqual(curves.pumpFraction);
    // What a cell did not hold is held over from the step before.
    for (const channel of channels)
      for (const [step, value] of (curves.series[channel] ?? []).entries())
        if (value !== null) expect(back.series[channel]?.[step]).toBeCloseTo(value, 3);
  });
});
