import type { Matrix } from 'ml-matrix';
import type { Channel } from '../../shared-types/channels.ts';
import type { Misfit } from './model/loop-problem.ts';

/** Fewer common blocks tell nothing of what two channels share. */
const leastCommon = 8;

/**
 * Covariance of J'r where the channels' misfits of one block belong together: J'RJ, R the correlation of the misfits.
 *
 * Two thermometers of one pan miss by the same cloud: together they say less of it than two strangers would. What each
 * channel shares with itself from block to block is in its spread already.
 *
 * @param rows - The Jacobian's rows of the misfits over their spread, in the order of the misfits.
 */
export function scoreCovariance(rows: Matrix, misfits: readonly Misfit[]): Matrix {
  const shared = correlations(misfits);
  const places = placesByBlock(misfits);
  const mixed = rows.clone();
  for (const own of places.values())
    for (const a of own)
      for (const b of own) {
        const correlation = a === b ? 0 : (shared.get(pairKey(a.channel, b.channel)) ?? 0);
        if (correlation === 0) continue;
        for (let column = 0; column < rows.columns; column++)
          mixed.set(a.row, column, mixed.get(a.row, column) + correlation * rows.get(b.row, column));
      }
  return rows.transpose().mmul(mixed);
}

interface Placed {
  readonly channel: Channel;
  readonly row: number;
  readonly apart: number;
}

function placesByBlock(misfits: readonly Misfit[]): Map<string, Placed[]> {
  let row = 0;
  const placed = misfits.flatMap(({ channel, day, blocks, apart }) =>
    blocks.map((block, index) => ({
      key: `${day} ${block}`,
      channel,
      row: row++,
      apart: apart[index] as number,
    })),
  );
  return Map.groupBy(placed, ({ key }) => key);
}

const pairKey = (a: Channel, b: Channel) => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** Of each two channels over their common blocks, about nought. */
function correlations(misfits: readonly Misfit[]): Map<string, number> {
  const sums = new Map<string, { both: number; a: number; b: number; count: number }>();
  for (const own of placesByBlock(misfits).values())
    for (const a of own)
      for (const b of own) {
        if (a.channel >= b.channel) continue;
        const key = pairKey(a.channel, b.channel);
        const sum = sums.get(key) ?? { both: 0, a: 0, b: 0, count: 0 };
        sums.set(key, sum);
        sum.both += a.apart * b.apart;
        sum.a += a.apart ** 2;
        sum.b += b.apart ** 2;
        sum.count++;
      }
  return new Map(
    [...sums].flatMap(([key, { both, a, b, count }]) =>
      count < leastCommon || a * b === 0 ? [] : [[key, both / Math.sqrt(a * b)]],
    ),
  );
}
