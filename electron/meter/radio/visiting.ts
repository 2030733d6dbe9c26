/** A short connection to another device beside the meter's: its values are read once, and it is left. */
import type { Peripheral } from '@abandonware/noble';
import { plainUuid } from '../../../shared-core/gatt/assigned-numbers.ts';
import type { FromRadio, ToRadio } from '../radio-messages.ts';
import { heardJustNow, isFollowing, pauseListening, resumeListening } from './listening.ts';
import { messageOf, send, sendable } from './outbox.ts';
import { readAnswersWithinMs, within } from './within.ts';

/** It was heard just now, so it answers soon or not at all. */
export const visitConnectsWithinMs = 6000;
/** A meter that is only listened to is not heard while a device is connected to. */
const unheardWithinMs = 3000;
export const visitDiscoversWithinMs = 5000;

/** The visit under way. The same device may be visited again before a visit that was ended has heard of that. */
let visited: { peripheral: Peripheral } | null = null;

/**
 * Reads these characteristics of a device that was heard just now. Whatever fails is reported, and the meter's link goes on.
 * A visit that was ended says no more.
 */
export async function visit({
  deviceId,
  serviceUuid,
  characteristicUuids,
}: Extract<ToRadio, { type: 'visit' }>): Promise<void> {
  await endVisit();
  const values: Extract<FromRadio, { type: 'visited' }>['values'] = [];
  const peripheral = heardJustNow(deviceId);
  if (peripheral === null || peripheral.connectable === false) {
    send({ type: 'visited', deviceId, values, failed: 'unheard' });
    return;
  }
  const own = { peripheral };
  visited = own;
  peripheral.removeListener('connect', leaveLate).once('connect', leaveLate);
  try {
    try {
      await pauseListening();
      if (visited !== own) return;
      const limitMs = isFollowing() ? unheardWithinMs : visitConnectsWithinMs;
      await within(peripheral.connectAsync(), limitMs, 'visit');
    } finally {
      // The next visit stopped it for itself.
      if (visited === null || visited === own) resumeListening();
    }
    if (visited !== own) return;
    const discovered = peripheral.discoverServicesAsync([]);
    const services = await within(discovered, visitDiscoversWithinMs, 'visit-services');
    // The answer may be to the next visit, which noble gives both: what is asked for twice is answered on one object only.
    if (visited !== own) return;
    const service = services.find(({ uuid }) => plainUuid(uuid) === serviceUuid);
    const offered =
      service && within(service.discoverCharacteristicsAsync([]), visitDiscoversWithinMs, 'visit');
    const characteristics = ((await offered) ?? []).filter(({ uuid }) =>
      characteristicUuids.includes(plainUuid(uuid) ?? ''),
    );
    for (const each of characteristics) {
      if (visited !== own) return;
      const characteristicUuid = plainUuid(each.uuid);
      const bytes = sendable(await within(each.readAsync(), readAnswersWithinMs, 'visit-read'));
      if (characteristicUuid !== null && bytes !== null) values.push({ characteristicUuid, bytes });
    }
    if (visited === own) send({ type: 'visited', deviceId, values, failed: null });
  } catch (error) {
    if (visited !== own) return;
    console.error(messageOf(error));
    send({ type: 'visited', deviceId, values, failed: 'refused' });
  } finally {
    if (visited === own) await endVisit();
  }
}

/** One that was given up can connect all the same, as that was on its way. */
function leaveLate(this: Peripheral, error?: string): void {
  if (visited?.peripheral === this) return;
  if (error) this.once('connect', leaveLate);
  else this.disconnect();
}

/** Leaves the device, wherever the visit is. */
export async function endVisit(): Promise<void> {
  const { peripheral } = visited ?? {};
  visited = null;
  if (peripheral === undefined) return;
  if (peripheral.state === 'connected')
    await within(peripheral.disconnectAsync(), 1500, 'visit-leave').catch(() => undefined);
  else if (peripheral.state === 'connecting') peripheral.cancelConnect();
}
