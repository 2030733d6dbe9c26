import { Refusal } from '../../../shared-core/contract/answer.ts';
import { withAddressEnd } from '../../../shared-core/gatt/address-end.ts';
import {
  type MeterDescription,
  meterDescriptionSchema,
} from '../../../shared-core/gatt/meter-description.ts';
import { isReadAlike, isRenamed, namesakes } from '../../../shared-core/gatt/namesakes.ts';
import { confirmed } from '../../../shared-core/gatt/recognize-meter.ts';
import { fromOf, isFrom } from '../../../shared-core/gatt/source.ts';
import { message } from '../../../shared-core/words/message.ts';
import { simulatedProfile } from '../../meter/simulated-link.ts';
import type { MeterRow } from '../../store/meter-table.ts';
import type { AppContext } from '../context.ts';
import { isDisturbance } from '../fault-message.ts';
import { createSignal } from '../signal.ts';
import type { ChosenLink } from './chosen-link.ts';

/** Gives the connected meter its row in the open yard, with how it is read. */
export function createMeterMemory(context: AppContext, link: ChosenLink) {
  let meterId: number | null = null;
  /** Of the yard, each of which the connected one may be: a person has to say which. */
  let mayBe: MeterRow[] = [];
  let retry: NodeJS.Timeout | undefined;
  const remembered = createSignal<MeterDescription>();

  /** Where the disk refuses it, no value can be saved: it is tried again until the meter has its row. */
  function rememberOrLater(): void {
    clearTimeout(retry);
    try {
      remember();
      context.delays.end(link);
    } catch (error) {
      if (isDisturbance(error)) {
        context.delays.begin(link, error, message('refusal.meter-waits'));
        retry = setTimeout(rememberOrLater, context.retryAfterMs);
        retry.unref();
      } else context.reportFault(error);
    }
  }

  /** Meters of the yard that have another address than a device, and its name. */
  function namesakesOf(deviceId: string): MeterRow[] {
    const ofKind = context
      .yard()
      .meters.all()
      .filter(({ kind }) => kind === 'bluetooth');
    return namesakes({ deviceId, ownName: ownNameOf(deviceId) }, ofKind);
  }

  /**
   * How to read a device that no meter of the yard has the address of: as all of its name are read. Null where there are
   * none, or they differ.
   */
  function readAsNamesakes(deviceId: string): MeterDescription | null {
    const [first, ...others] = namesakesOf(deviceId).map(({ description }) => description!);
    return first && others.every((each) => isReadAlike(each, first)) ? first : null;
  }

  /** The name that a device gives itself; empty where it was not heard. */
  function ownNameOf(deviceId: string): string {
    const { state } = link.current();
    const own = state.deviceId === deviceId ? state.deviceName : null;
    return own || (link.devices().find((each) => each.deviceId === deviceId)?.name ?? '');
  }

  /** A name that no other meter has: two of one could not be told apart where one is chosen. */
  function nameFor(deviceId: string): string {
    const own = ownNameOf(deviceId) || deviceId;
    const isTaken = context
      .yard()
      .meters.all()
      .some((each) => each.name === own && each.deviceId !== deviceId);
    return isTaken ? withAddressEnd(own, deviceId) : own;
  }

  /** A device of this address: what a person has to say which it is, of the meters that it may be. */
  function askedOf(
    { deviceId, known }: { deviceId: string; known: MeterRow | undefined },
    description: MeterDescription,
  ): MeterRow[] {
    // One that had the address earlier may have it back.
    if (known) return isRenamed(known, ownNameOf(deviceId)) ? [known, ...namesakesOf(deviceId)] : [];
    return namesakesOf(deviceId).filter((each) => isReadAlike(each.description!, description));
  }

  function remember(): void {
    mayBe = [];
    const { kind, described, state } = link.current();
    const description = described?.description ?? null;
    const { deviceId } = state;
    if (kind === 'none' || deviceId === null || description === null) return;
    // Remembered when it can be: `rememberAgain`.
    if (!context.mayWrite()) return;
    const { meters } = context.yard();
    const known = meters.find(kind, deviceId);
    if (kind === 'bluetooth') {
      mayBe = askedOf({ deviceId, known }, description);
      if (mayBe.length > 0) {
        // Shown as one of them would show it, and not saved.
        meterId = mayBe[0]!.id;
        remembered.give(description);
        return;
      }
    }
    if (described?.toConfirm) {
      // Its values are shown, and what is saved of it stays as it was confirmed.
      meterId = known?.id ?? null;
      remembered.give(description);
      return;
    }
    if (known && isRenamed(known, ownNameOf(deviceId))) meters.freeAddress(kind, deviceId);
    const name = nameFor(deviceId);
    meterId = meters.put({ kind, deviceId, name, description }, context.now()).id;
    if (kind === 'simulated' && !known?.profile) meters.setProfile(meterId, simulatedProfile, context.now());
    context.changed(['meters']);
    remembered.give(description);
  }

  /** What is saved of the connected meter, and which it is, is asked of the yard again. */
  function rememberAgain(): void {
    meterId = null;
    mayBe = [];
    const { kind, described, state } = link.current();
    if (described === null || kind === 'none' || state.deviceId === null || !context.mayWrite()) return;
    const known = context.yard().meters.find(kind, state.deviceId)?.description ?? null;
    if (known !== null) link.current().recall(known);
    if (meterId === null) rememberOrLater();
  }

  link.left.follow(() => {
    meterId = null;
    mayBe = [];
    clearTimeout(retry);
    context.delays.end(link);
  });
  link.described.follow(rememberOrLater);
  // Links differ in what comes first, the description or the name of the device.
  link.phaseChanged.follow((phase) => {
    if (phase === 'live' && meterId === null) rememberOrLater();
  });

  return {
    remembered,
    close: (): void => clearTimeout(retry),
    /** Null until the meter has its row; the first of those that it may be, where a person has to say which. */
    meterId: (): number | null => meterId,
    mayBe: (): readonly MeterRow[] => mayBe,
    readAsNamesakes,
    /** @throws Refusal where nobody is to say any more whether the connected meter is this one */
    checkMayBe: (deviceId: string, ofYard: number | null = null): void => {
      const isAsked = mayBe.length > 0 && link.current().state.deviceId === deviceId;
      if (!isAsked || (ofYard !== null && mayBe.every(({ id }) => id !== ofYard)))
        throw new Refusal(message('refusal.meter-said'));
    },
    /** What the connected device calls itself, where the meter of its address has another name; else null. */
    newName: (): string | null => {
      const { deviceId } = link.current().state;
      const [first] = mayBe;
      return deviceId !== null && first?.deviceId === deviceId ? ownNameOf(deviceId) : null;
    },
    /** The name that the connected device is saved under. */
    nameFor,
    /** Nothing of those that it may be holds for it: it says how it is read, or is set up. */
    isAnother: (deviceId: string): void => {
      const { kind } = link.current();
      const { meters } = context.yard();
      if (kind === 'none') return;
      if (meters.find(kind, deviceId)) meters.freeAddress(kind, deviceId);
      const name = nameFor(deviceId);
      meterId = meters.put({ kind, deviceId, name, description: null }, context.now()).id;
      mayBe = [];
      context.changed(['meters']);
      link.current().recall(null);
    },
    /**
     * A description of a meter, with what it says of itself where it is the one that is connected.
     * @throws Refusal where that one does not send what is described
     */
    asOffered: (
      { id, name: meterName, description: before }: MeterRow,
      description: MeterDescription,
    ): MeterDescription => {
      const { described } = link.current();
      if (id !== meterId || described === null) {
        const isSameSource = before !== null && isFrom(before.source, fromOf(description.source));
        return { ...description, ...(isSameSource && before.identity && { identity: before.identity }) };
      }
      if (!link.current().offers(description)) {
        throw new Refusal(message('refusal.meter-file-not-offered', { meterName }));
      }
      return confirmed(described.characteristics, description);
    },
    /** The meter's row may say otherwise now how it is read, as where a file was used for it, or that was undone. */
    readAsSaved: (): void => {
      const { kind, described, state } = link.current();
      if (kind === 'none' || described === null || state.deviceId === null) return;
      const { meters } = context.yard();
      const known = meters.find(kind, state.deviceId);
      if (known?.description === null) {
        // Nothing is known of it, or that was undone.
        meterId = known.id;
        mayBe = [];
        if (described.description !== null) link.current().undescribe();
        return;
      }
      const asNamesakes = known || described.description ? null : readAsNamesakes(state.deviceId);
      if (asNamesakes !== null) {
        // That it is another was undone.
        meterId = null;
        link.current().recall(asNamesakes);
        return;
      }
      const asked = mayBe.map(({ id }) => id).join();
      const description = described.description && meterDescriptionSchema.parse(described.description);
      const toAsk =
        kind === 'bluetooth' && description ? askedOf({ deviceId: state.deviceId, known }, description) : [];
      // That somebody set it up was undone, and no meter of its name is read like it.
      if (known === undefined && toAsk.length === 0 && meters.isUndone(kind, state.deviceId)) {
        meterId = null;
        link.current().undescribe();
        return;
      }
      // It was recognized, or that was undone.
      if (toAsk.map(({ id }) => id).join() !== asked || (asked === '' && (known?.id ?? null) !== meterId))
        rememberAgain();
      if (mayBe.length > 0 || meterId === null || described.toConfirm) return;
      const saved = known?.description;
      const now = meterDescriptionSchema.nullable().parse(link.current().described?.description ?? null);
      // Both are in the order of the schema.
      if (saved && JSON.stringify(saved) !== JSON.stringify(now)) link.current().recall(saved);
    },
    /** Another yard was opened, or can be written to now: the connected meter needs a row in that one. */
    rememberAgain,
  };
}
export type MeterMemory = ReturnType<typeof createMeterMemory>;
