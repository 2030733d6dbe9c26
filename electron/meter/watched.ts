import { batteryLevelUuid } from '../../shared-core/gatt/assigned-numbers.ts';
import type { DiscoveredCharacteristic } from '../../shared-core/gatt/describe-meter.ts';
import type { Source } from '../../shared-core/gatt/source.ts';
import { mostWatched, type ToRadio } from './radio-messages.ts';

type Watched = Pick<Extract<ToRadio, { type: 'watch' }>, 'sent' | 'read'>;

/** All reads of an unknown meter together, a second. Each costs it a packet and its battery. */
const MOST_READS_PER_SECOND = 5;
const LEAST_READ_EVERY_MS = 500;
const MOST_READ_EVERY_MS = 5000;

/** Generic Access, Generic Attribute and Device Information (Bluetooth SIG, Assigned Numbers 3.4): names, no values. */
const namingServices = ['1800', '1801', '180a'];

const refOf = ({ serviceUuid, characteristicUuid }: DiscoveredCharacteristic) => ({
  serviceUuid,
  characteristicUuid,
});

/**
 * What is watched of a meter that nobody has described: everything it sends, and what it only lets be read. Nothing is
 * written, and nothing is read that it does not declare readable.
 */
export function watchedOfUnknown(characteristics: readonly DiscoveredCharacteristic[]): Watched {
  const telling = characteristics.filter(
    (each) => !namingServices.includes(each.serviceUuid) && each.characteristicUuid !== batteryLevelUuid,
  );
  const read = telling.filter((each) => each.canRead && !each.canNotify).slice(0, mostWatched);
  const everyMs = Math.min(
    MOST_READ_EVERY_MS,
    Math.max(LEAST_READ_EVERY_MS, (read.length * 1000) / MOST_READS_PER_SECOND),
  );
  return {
    sent: telling
      .filter((each) => each.canNotify)
      .slice(0, mostWatched)
      .map(refOf),
    read: read.map((each) => ({ ...refOf(each), everyMs })),
  };
}

/** What is watched of a meter that is known: its source alone. Nothing where that is advertised. */
export function watchedOf(source: Source): Watched {
  switch (source.kind) {
    case 'sent': {
      const { serviceUuid, characteristicUuid } = source;
      return { sent: [{ serviceUuid, characteristicUuid }], read: [] };
    }
    case 'read': {
      const { serviceUuid, characteristicUuid, everyMs } = source;
      return { sent: [], read: [{ serviceUuid, characteristicUuid, everyMs }] };
    }
    default:
      return { sent: [], read: [] };
  }
}
