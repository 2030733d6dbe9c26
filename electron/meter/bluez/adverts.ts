import { plainUuid } from '../../../shared-core/gatt/assigned-numbers.ts';
import type { PacketFrom } from '../../../shared-core/gatt/source.ts';
import { bytesOf } from './values.ts';

const highestCompanyId = 0xffff;

/** What a device advertises, in the two properties that BlueZ has for it: bytes by a company's number, and by a service's UUID. */
export function packetsIn({
  ManufacturerData,
  ServiceData,
}: Record<string, unknown>): { from: PacketFrom; bytes: Buffer }[] {
  const packets: { from: PacketFrom; bytes: Buffer }[] = [];
  for (const [key, value] of Object.entries(ManufacturerData ?? {})) {
    const companyId = Number(key);
    const bytes = bytesOf(value);
    const isCompany = Number.isInteger(companyId) && companyId >= 0 && companyId <= highestCompanyId;
    if (isCompany && bytes !== null) packets.push({ from: { kind: 'manufacturer-data', companyId }, bytes });
  }
  for (const [uuid, value] of Object.entries(ServiceData ?? {})) {
    const serviceUuid = plainUuid(uuid);
    const bytes = bytesOf(value);
    if (serviceUuid !== null && bytes !== null) {
      packets.push({ from: { kind: 'service-data', serviceUuid }, bytes });
    }
  }
  return packets;
}
