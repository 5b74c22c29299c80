import { play } from '../support/failures/play.ts';
import { failureRows } from '../support/failures/table.ts';

/** How soon each failure of the simulated loop is noticed, answered and got over: a JSON line a row. */
export async function benchFailures(): Promise<void> {
  for (const row of failureRows) {
    const { failure, head, response } = row;
    const { announced, detectedS, respondedS, recoveredS, harvestFraction, mostIceKg } = play(row);
    console.log(
      JSON.stringify({
        bench: 'failures',
        failure,
        head,
        announced,
        detectedS,
        response,
        respondedS,
        recovery: row.recovery?.by ?? null,
        recoveredS: row.recovery === undefined ? null : recoveredS,
        harvestFraction: Number.isFinite(harvestFraction) ? Number(harvestFraction.toFixed(2)) : null,
        mostIceKg: Number(mostIceKg.toFixed(1)),
      }),
    );
  }
}
