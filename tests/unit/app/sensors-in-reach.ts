import { EventEmitter } from 'node:events';
import type { SensorRadio, SensorRadioEvents } from '../../../electron/meter/sensor-radio.ts';
import type { SensedAir } from '../../../shared-core/gatt/environment.ts';
import { HandHeldMeter } from './hand-held-meter.ts';

/** Hears what the test says beside its values. */
export class MeterBesideSensors extends HandHeldMeter {
  overhears = false;
  override overhear(on: boolean): void {
    this.overhears = on;
  }
  visited: string[] = [];
  says: SensedAir | null = { tempC: 17, rh: 0.7 };
  isEnded = false;
  override async visit(deviceId: string): Promise<SensedAir | null> {
    this.visited.push(deviceId);
    return this.says;
  }
  override endVisit(): void {
    this.isEnded = true;
  }
}

/** Says what the test says, and counts how often it was read. */
export class TestSensors extends EventEmitter<SensorRadioEvents> implements SensorRadio {
  says: SensedAir | null = { tempC: 18, rh: 0.6 };
  reads = 0;
  releases = 0;
  scan(on: boolean): void {
    if (on) this.emit('heard', { deviceId: 's1', name: 'Wall', rssiDbm: -60 });
  }
  async read(): Promise<SensedAir | null> {
    this.reads++;
    return this.says;
  }
  async release(): Promise<void> {
    this.releases++;
  }
}
