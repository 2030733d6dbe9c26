import type { Characteristic, Peripheral } from '@abandonware/noble';
import {
  plainUuid,
  presentationFormatUuid,
  serviceChangedUuid,
  userDescriptionUuid,
  validRangeUuid,
} from '../../../shared-core/gatt/assigned-numbers.ts';
import { type FromRadio, longestValueBytes } from '../radio-messages.ts';
import { sendable } from './outbox.ts';
import { readAnswersWithinMs, within } from './within.ts';

export const mostCharacteristics = 128;

export const keyOf = (serviceUuid: string, characteristicUuid: string) =>
  `${serviceUuid}/${characteristicUuid}`;

/**
 * Asks a connected meter what it offers.
 * @param offered filled with noble's object for each characteristic, by `keyOf`
 * @param stillWanted checked before each question, so that a meter that was left gets no more of them
 */
export async function discover(
  peripheral: Peripheral,
  offered: Map<string, Characteristic>,
  stillWanted: () => boolean,
) {
  const list: Extract<FromRadio, { type: 'discovered' }>['characteristics'] = [];
  // One service after the other: noble's own "discover all" never returns when there are none.
  for (const service of await peripheral.discoverServicesAsync([])) {
    const serviceUuid = plainUuid(service.uuid);
    if (serviceUuid === null) continue;
    for (const characteristic of await service.discoverCharacteristicsAsync([])) {
      const characteristicUuid = plainUuid(characteristic.uuid);
      if (characteristicUuid === null || list.length === mostCharacteristics || !stillWanted()) continue;
      offered.set(keyOf(serviceUuid, characteristicUuid), characteristic);
      const canNotify =
        (characteristic.properties.includes('notify') || characteristic.properties.includes('indicate')) &&
        characteristicUuid !== serviceChangedUuid;
      const canRead = characteristic.properties.includes('read');
      const described =
        canNotify || canRead ? await readDescriptors(characteristic) : new Map<string, Buffer>();
      list.push({
        serviceUuid,
        characteristicUuid,
        canNotify,
        canRead,
        canWrite:
          characteristic.properties.includes('write') ||
          characteristic.properties.includes('writeWithoutResponse'),
        presentationFormat: sendable(described.get(presentationFormatUuid)),
        userDescription:
          described.get(userDescriptionUuid)?.toString('utf8').slice(0, longestValueBytes) ?? null,
        validRange: sendable(described.get(validRangeUuid)),
      });
    }
  }
  return list;
}

async function readDescriptors(characteristic: Characteristic): Promise<Map<string, Buffer>> {
  const values = new Map<string, Buffer>();
  const telling = [presentationFormatUuid, userDescriptionUuid, validRangeUuid];
  const descriptors = await characteristic.discoverDescriptorsAsync();
  for (const descriptor of descriptors) {
    const uuid = plainUuid(descriptor.uuid);
    if (uuid === null || !telling.includes(uuid)) continue;
    const value = await within(descriptor.readValueAsync(), readAnswersWithinMs, `descriptor ${uuid}`);
    // Some systems hand out the user description as text.
    if (value.length > 0) values.set(uuid, Buffer.from(value));
  }
  return values;
}
