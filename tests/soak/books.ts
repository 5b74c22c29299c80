import { closeBooks, givenSites, partFaultNames } from '../support/books.ts';

/**
 * Books of heat and water over a year, for every site, healthy and under every fault of a part.
 * `npm run soak -- 30` takes steps of 30 s; 10 s otherwise.
 */
const stepS = Number(process.argv[2] ?? 10);
const span = { fromMs: Date.UTC(2031, 0, 1), days: 365, stepS };
let worst = 0;
for (const [file, site] of givenSites)
  for (const fault of [undefined, ...partFaultNames]) {
    const { heatFraction, waterFraction } = closeBooks(site, fault === undefined ? span : { ...span, fault });
    worst = Math.max(worst, heatFraction, waterFraction);
    console.log(JSON.stringify({ file, fault: fault ?? null, heatFraction, waterFraction }));
  }
console.log(JSON.stringify({ worst, atMost: 1e-9, met: worst < 1e-9 }));
process.exitCode = worst < 1e-9 ? 0 : 1;
