import { exitCodes } from './host/new-command.ts';
import { stopAsked } from './host/stop-asked.ts';
import { createHouse } from './start/house.ts';
import { readStartOptions } from './start/options.ts';

const house = createHouse(readStartOptions(process.argv));
const fault = await Promise.race([stopAsked(), house.run()]);
if (fault !== undefined) console.error(`flatwater: ${fault}`);
await house.stop();
process.exit(fault === undefined ? exitCodes.stopped : exitCodes.failed);
