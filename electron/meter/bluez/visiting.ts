/** The same as `radio/visiting.ts` over BlueZ, which holds several connections by itself. */
import { plainUuid } from '../../../shared-core/gatt/assigned-numbers.ts';
import { send, sendable } from '../radio/outbox.ts';
import { visitConnectsWithinMs, visitDiscoversWithinMs } from '../radio/visiting.ts';
import { readAnswersWithinMs, within } from '../radio/within.ts';
import type { FromRadio, ToRadio } from '../radio-messages.ts';
import { type Bluez, characteristicInterface, deviceInterface } from './bluez.ts';
import { textOfError } from './errors.ts';
import type { Scan } from './scan.ts';
import { bytesOf, isOn, textOf } from './values.ts';

export class Visits {
  readonly #bluez: Bluez;
  readonly #scan: Scan;
  /** Path of the device that is connected to for a visit; null between visits. */
  #path: string | null = null;
  /** Counts visits and their ends: the same device may be visited again before one that was ended has heard of that. */
  #turn = 0;

  constructor(bluez: Bluez, scan: Scan) {
    this.#bluez = bluez;
    this.#scan = scan;
  }

  async visit({ deviceId, characteristicUuids }: Extract<ToRadio, { type: 'visit' }>): Promise<void> {
    const ended = this.end();
    const turn = this.#turn;
    await ended;
    if (this.#turn !== turn) return;
    const values: Extract<FromRadio, { type: 'visited' }>['values'] = [];
    const path = this.#scan.pathOf(deviceId);
    if (path === null) {
      send({ type: 'visited', deviceId, values, failed: 'unheard' });
      return;
    }
    const has = (property: string) => isOn(this.#bluez.property(path, deviceInterface, property));
    try {
      await this.#scan.stop();
      // Another program's connection is used, and left as it is.
      if (!has('Connected')) {
        this.#path = path;
        await this.#bluez.call(path, deviceInterface, 'Connect', { timeoutMs: visitConnectsWithinMs });
      }
      await within(
        this.#until(() => has('ServicesResolved')),
        visitDiscoversWithinMs,
        'visit',
      );
      for (const [characteristicPath, { UUID }] of this.#bluez.having(characteristicInterface)) {
        const characteristicUuid = plainUuid(textOf(UUID));
        if (characteristicUuid === null || !characteristicPath.startsWith(`${path}/`)) continue;
        if (!characteristicUuids.includes(characteristicUuid)) continue;
        if (this.#turn !== turn) return;
        const answer = await this.#bluez.call(characteristicPath, characteristicInterface, 'ReadValue', {
          signature: 'a{sv}',
          body: [[]],
          timeoutMs: readAnswersWithinMs,
        });
        const bytes = sendable(bytesOf(answer) ?? undefined);
        if (bytes !== null) values.push({ characteristicUuid, bytes });
      }
      if (this.#turn === turn) send({ type: 'visited', deviceId, values, failed: null });
    } catch (error) {
      if (this.#turn !== turn) return;
      console.error(`visit: ${textOfError(error)}`);
      send({ type: 'visited', deviceId, values, failed: 'refused' });
    } finally {
      if (this.#turn === turn) await this.end();
    }
  }

  async #until(isSo: () => boolean): Promise<void> {
    await new Promise<void>((resolve) => {
      const check = () => {
        if (!isSo()) return;
        this.#bluez.off('changed', check);
        resolve();
      };
      this.#bluez.on('changed', check);
      setTimeout(() => this.#bluez.off('changed', check), visitDiscoversWithinMs);
      check();
    });
  }

  async end(): Promise<void> {
    this.#turn++;
    const path = this.#path;
    this.#path = null;
    if (path === null || !this.#bluez.isRunning) return;
    await this.#bluez
      .call(path, deviceInterface, 'Disconnect', { timeoutMs: 1500 })
      .catch((error) => console.error(`visit: ${textOfError(error)}`));
  }
}
