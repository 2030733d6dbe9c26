import type { Peripheral } from '@abandonware/noble';
import { plainUuid } from '../../../shared-core/gatt/assigned-numbers.ts';
import type { PacketFrom } from '../../../shared-core/gatt/source.ts';

const companyIdOctets = 2;

/**
 * What a meter advertises, each packet once: noble hands out what it heard last with every later packet that has none.
 */
export class AdvertReader {
  readonly #seen = new WeakSet<Buffer>();

  /** The bytes behind the company id, or behind the service's UUID, that were not read before. */
  read({ advertisement }: Peripheral): { from: PacketFrom; bytes: Buffer }[] {
    const packets: { from: PacketFrom; bytes: Buffer }[] = [];
    const { manufacturerData, serviceData } = advertisement;
    if (manufacturerData && manufacturerData.length >= companyIdOctets && this.#isNew(manufacturerData)) {
      packets.push({
        // Supplement to the Core Specification, Part A 1.4: the company id comes first, low octet first.
        from: { kind: 'manufacturer-data', companyId: manufacturerData.readUInt16LE(0) },
        bytes: manufacturerData.subarray(companyIdOctets),
      });
    }
    for (const { uuid, data } of serviceData ?? []) {
      const serviceUuid = plainUuid(uuid);
      if (serviceUuid !== null && data && this.#isNew(data)) {
        packets.push({ from: { kind: 'service-data', serviceUuid }, bytes: data });
      }
    }
    return packets;
  }

  #isNew(bytes: Buffer): boolean {
    if (this.#seen.has(bytes)) return false;
    this.#seen.add(bytes);
    return true;
  }
}
