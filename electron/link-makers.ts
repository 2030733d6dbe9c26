import { randomInt } from 'node:crypto';
import { join } from 'node:path';
import type { LinkMakers } from './app/meter/chosen-link.ts';
import { BluetoothLink } from './meter/bluetooth-link.ts';
import { NoLink } from './meter/no-link.ts';
import { SimulatedLink } from './meter/simulated-link.ts';

/** The links as the built app makes them; `builtDir` is where the bundled radio process lies. */
export const linkMakers = (builtDir: string): LinkMakers => ({
  none: () => new NoLink(),
  bluetooth: () => new BluetoothLink({ radioScript: join(builtDir, 'radio-process.js') }),
  simulated: () => new SimulatedLink({ seed: randomInt(2 ** 32) }),
});
