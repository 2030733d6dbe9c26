import { randomInt } from 'node:crypto';
import { join } from 'node:path';
import type { LinkMakers } from './app/meter/chosen-link.ts';
import { BluetoothLink } from './meter/bluetooth-link.ts';
import { NoLink } from './meter/no-link.ts';
import type { StartRadio } from './meter/radio-port.ts';
import { BluetoothSensorRadio } from './meter/sensor-radio.ts';
import { SimulatedLink } from './meter/simulated-link.ts';
import { SimulatedSensors } from './meter/simulated-sensors.ts';

/**
 * The links as the built app makes them; `builtDir` is where the bundled radio process lies.
 * @param startPort  how that process is started; as a child of Node's unless given
 */
export const linkMakers = (builtDir: string, startPort?: StartRadio): LinkMakers => ({
  none: () => new NoLink(),
  bluetooth: () =>
    new BluetoothLink({ radioScript: join(builtDir, 'radio-process.js'), ...(startPort && { startPort }) }),
  simulated: () => new SimulatedLink({ seed: randomInt(2 ** 32) }),
  sensors: {
    real: () =>
      new BluetoothSensorRadio({
        radioScript: join(builtDir, 'radio-process.js'),
        ...(startPort && { startPort }),
      }),
    simulated: () => new SimulatedSensors(),
  },
});
