import { withAddressEnd } from './address-end.ts';
import { isSameLayout } from './layout.ts';
import type { MeterDescription } from './meter-description.ts';
import { fromOf, keyOfFrom } from './source.ts';

/** A meter as it is remembered: by its address, and the name that it gave itself. */
interface Remembered {
  deviceId: string;
  name: string;
  description: MeterDescription | null;
}

/** Whether both take the same number from the same packets. */
export const isReadAlike = (a: MeterDescription, b: MeterDescription): boolean =>
  a.unit === b.unit &&
  isSameLayout(a.value, b.value) &&
  keyOfFrom(fromOf(a.source)) === keyOfFrom(fromOf(b.source));

/**
 * Whether a device of a meter's address gives itself another name than the meter has: it may be another meter. A name that
 * only goes on, or ends earlier, was shortened, as an advert may do.
 *
 * @param ownName  empty for a device without one, as if it ended before its first letter
 */
export const isRenamed = (
  { name, deviceId }: Pick<Remembered, 'name' | 'deviceId'>,
  ownName: string,
): boolean => name !== deviceId && !name.startsWith(ownName) && !ownName.startsWith(name);

/**
 * Meters that gave themselves the name that a device of another address has. A device may make up a new address at each
 * start (Bluetooth Core Specification, Vol 6 Part B 1.3.2), so it can be any of them, or one more of their kind.
 *
 * @param ownName  empty for a device without one, which can be none of them
 */
export const namesakes = <M extends Remembered>(
  { deviceId, ownName }: { deviceId: string; ownName: string },
  meters: readonly M[],
): M[] =>
  meters.filter(
    (meter) =>
      ownName !== '' &&
      meter.deviceId !== deviceId &&
      meter.description !== null &&
      // Where two have one name, the end of the address is added.
      (meter.name === ownName || meter.name === withAddressEnd(ownName, meter.deviceId)),
  );
