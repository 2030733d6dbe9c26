import { openSensorUuid } from '../../../shared-core/gatt/environment.ts';
import type { PacketFrom } from '../../../shared-core/gatt/source.ts';

/** What sensors advertised since the app was told last, by the device's id. */
export class SensorAdverts {
  readonly #newest = new Map<string, Uint8Array<ArrayBuffer>>();

  hear(deviceId: string, packets: readonly { from: PacketFrom; bytes: Buffer }[]): void {
    for (const { from, bytes } of packets)
      if (from.kind === 'service-data' && from.serviceUuid === openSensorUuid)
        this.#newest.set(deviceId, Uint8Array.from(bytes));
  }

  of(deviceId: string): Uint8Array<ArrayBuffer> | undefined {
    return this.#newest.get(deviceId);
  }

  clear(): void {
    this.#newest.clear();
  }
}
