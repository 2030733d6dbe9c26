import { EventEmitter } from 'node:events';
import type { SensedAir } from '../../shared-core/gatt/environment.ts';
import type { SensorRadio, SensorRadioEvents } from './sensor-radio.ts';

/** Made-up sensors, by their ids, and what each says. The window names them in the person's words. */
const sensed: Readonly<Record<string, SensedAir>> = {
  'simulated-hygrometer': { tempC: 18.4, rh: 0.61 },
  'simulated-probe': { tempC: 14.2, rh: null },
};

/** For the demo yard, where the meter is simulated as well. */
export class SimulatedSensors extends EventEmitter<SensorRadioEvents> implements SensorRadio {
  scan(on: boolean): void {
    if (!on) return;
    for (const deviceId of Object.keys(sensed)) this.emit('heard', { deviceId, name: '', rssiDbm: null });
  }
  async read(deviceId: string): Promise<SensedAir | null> {
    return sensed[deviceId] ?? null;
  }
  async release(): Promise<void> {}
}
