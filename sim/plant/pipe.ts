import type { Cell } from './water.ts';

/**
 * Pushes water through a pipe whose nodes stay full, from its first node to its last, or back.
 *
 * @returns Temperature of the water that comes out [°C]; the same mass as goes in. Nothing pushed
 * leaves the pipe as it is. A row of mixed nodes delays and smears; it never makes or loses heat.
 */
export function pushThrough(nodes: Cell[], massKg: number, waterC: number, backward = false): number {
  let passingC = waterC;
  for (let step = 0; step < nodes.length; step++) {
    const node = nodes[backward ? nodes.length - 1 - step : step];
    if (node === undefined || massKg === 0) continue;
    node.waterC = (node.massKg * node.waterC + massKg * passingC) / (node.massKg + massKg);
    passingC = node.waterC;
  }
  return passingC;
}
