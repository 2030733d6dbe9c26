import { type Message, message } from '../words/message.ts';
import { type DiscoveredCharacteristic, describeMeter } from './describe-meter.ts';
import { isSameLayout } from './layout.ts';
import type { MeterDescription, MeterIdentity } from './meter-description.ts';
import { isAdvertised, isFrom } from './source.ts';

/** How a connected meter is read. */
export interface RecognizedMeter {
  /** Null where a person has to set it up first. */
  description: MeterDescription | null;
  /** What was passed over and why. */
  remarks: Message[];
  /**
   * Present where it is not as it was when its description was confirmed: no value is saved before a person says what
   * its display shows. `before` reads it as it was read; null where that reads the same, or nothing any more.
   */
  toConfirm?: { before: MeterDescription | null };
}

/** Whether a connected meter has the value that a description reads, and gives it in that way. */
export const offers = (
  characteristics: readonly DiscoveredCharacteristic[],
  description: MeterDescription,
): boolean =>
  characteristics.some(
    (each) =>
      isReadBy(each, description) && (description.source.kind === 'read' ? each.canRead : each.canNotify),
  );

/** The description, with what the meter says now: a person confirmed it, or the meter was never met. */
export const confirmed = (
  characteristics: readonly DiscoveredCharacteristic[],
  description: MeterDescription,
): MeterDescription => ({ ...description, identity: identityOf(characteristics, description) });

/**
 * How to read a meter that was found to have these characteristics.
 *
 * @param known  how it was read before; null where it was never met. One that an earlier Pintally saved has no
 *   identity: it is taken as it is where the meter does not say otherwise.
 */
export function recognizeMeter(
  characteristics: readonly DiscoveredCharacteristic[],
  known: MeterDescription | null,
): RecognizedMeter {
  const own = describeMeter(characteristics);
  const described = own.description && confirmed(characteristics, own.description);
  if (known === null) return { ...own, description: described };
  if (!isAdvertised(known.source) && !offers(characteristics, known)) {
    const remarks = [message('meter.self.changed'), ...own.remarks];
    return { description: described, remarks, ...(described && { toConfirm: { before: null } }) };
  }

  const before = confirmed(characteristics, known);
  const now = describeMeter(characteristics.filter((each) => isReadBy(each, known))).description;
  const isOther = now !== null && !readsAlike(now, known);
  const isAsBefore = known.identity === undefined ? !isOther : isSame(known.identity, before.identity);
  if (isAsBefore) return { description: before, remarks: [] };
  return isOther
    ? { description: confirmed(characteristics, now), remarks: [], toConfirm: { before } }
    : { description: before, remarks: [], toConfirm: { before: null } };
}

/** Whether it is the characteristic that a description reads. */
export const isReadBy = (
  { serviceUuid, characteristicUuid }: DiscoveredCharacteristic,
  { source }: MeterDescription,
): boolean => isFrom(source, { kind: 'characteristic', serviceUuid, characteristicUuid });

function identityOf(
  characteristics: readonly DiscoveredCharacteristic[],
  description: MeterDescription,
): MeterIdentity {
  const read = characteristics.find((each) => isReadBy(each, description));
  return {
    presentationFormatHex: hexOf(read?.presentationFormat ?? null),
    userDescription: read?.userDescription ?? null,
    validRangeHex: hexOf(read?.validRange ?? null),
    serviceUuids: [...new Set(characteristics.map((each) => each.serviceUuid))].toSorted(),
  };
}

const hexOf = (bytes: Uint8Array | null): string | null =>
  bytes && [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');

const isSame = (a: MeterIdentity, b: MeterIdentity | undefined): boolean =>
  a.presentationFormatHex === b?.presentationFormatHex &&
  a.userDescription === b.userDescription &&
  a.validRangeHex === b.validRangeHex &&
  a.serviceUuids.join() === b.serviceUuids.join();

/** Whether both make the same number of the same bytes. */
const readsAlike = (a: MeterDescription, b: MeterDescription): boolean =>
  a.unit === b.unit && isSameLayout(a.value, b.value);
