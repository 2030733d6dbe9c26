import { z } from 'zod';
import { radioWaySchema } from '../../shared-core/contract/radio-way.ts';
import { longestValueBytes, packetFromSchema, uuidSchema } from '../../shared-core/gatt/source.ts';

export { longestValueBytes };

/**
 * What the app's process and the radio process send each other over Node's channel, which carries typed bytes as they
 * are (`serialization: 'advanced'`). Both sides check it.
 */

const deviceId = z.string().min(1).max(200);
/** Number of the connection attempt that a message is about: an answer to an earlier one is dropped. */
const attempt = z.number().int();
const characteristicRef = z.object({ serviceUuid: uuidSchema, characteristicUuid: uuidSchema });

/** Watching everything while a person sets a meter up must not overrun it. */
export const mostWatched = 16;
const valueBytes = z.instanceof(Uint8Array).refine((bytes) => bytes.length <= longestValueBytes);

export const toRadioSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('scan'), on: z.boolean() }),
  /** Waits until the meter is heard, then connects and discovers. */
  z.object({ type: z.literal('connect'), attempt, deviceId, searchMs: z.number().positive() }),
  /** Waits until the meter is heard, then passes on what it advertises. It is never connected to. */
  z.object({ type: z.literal('listen'), attempt, deviceId, searchMs: z.number().positive() }),
  /** Watches exactly these from now on. */
  z.object({
    type: z.literal('watch'),
    attempt,
    /** Those that it sends by itself. */
    sent: z.array(characteristicRef).max(mostWatched),
    /** Those that are read again and again. */
    read: z
      .array(characteristicRef.extend({ everyMs: z.number().int().min(200).max(5000) }))
      .max(mostWatched),
    /** Written once the others are watched: it makes the meter begin. */
    start: characteristicRef.extend({ bytes: valueBytes, withResponse: z.boolean() }).nullable(),
  }),
  /** Makes the meter show that it is there. */
  z.object({ type: z.literal('prove'), attempt }),
  z.object({ type: z.literal('disconnect'), attempt }),
  /** Listens for sensors beside whatever else is done. Where the adapter cannot, nothing else suffers. */
  z.object({ type: z.literal('overhear'), on: z.boolean() }),
  /** Connects to a device that was heard just now, reads these once and leaves it, beside the meter's connection. */
  z.object({
    type: z.literal('visit'),
    deviceId,
    serviceUuid: uuidSchema,
    characteristicUuids: z.array(uuidSchema).max(mostWatched),
  }),
  z.object({ type: z.literal('end-visit') }),
  z.object({ type: z.literal('quit') }),
]);
export type ToRadio = z.infer<typeof toRadioSchema>;

export const adapterReasonSchema = z.enum([
  'on',
  'starting',
  'no-adapter',
  'off',
  'refused',
  'unsupported',
  'module-missing',
  'no-answer',
  'service-stopped',
]);
export type AdapterReason = z.infer<typeof adapterReasonSchema>;

export const fromRadioSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('alive') }),
  z.object({
    type: z.literal('adapter'),
    reason: adapterReasonSchema,
    /** Null until it is chosen. */
    way: radioWaySchema.nullable(),
  }),
  z.object({
    type: z.literal('found'),
    devices: z
      .array(
        z.object({
          deviceId,
          name: z.string().max(248),
          rssiDbm: z.number().nullable(),
          serviceUuids: z.array(uuidSchema).max(64),
          /** What a sensor just advertised as `openSensorUuid`'s service data. */
          sensorData: valueBytes.optional(),
        }),
      )
      .max(500),
  }),
  /** The meter that is listened to. */
  z.object({ type: z.literal('heard'), attempt, name: z.string().max(248) }),
  z.object({ type: z.literal('connected'), attempt, name: z.string().max(248) }),
  z.object({
    type: z.literal('discovered'),
    attempt,
    characteristics: z
      .array(
        characteristicRef.extend({
          canNotify: z.boolean(),
          canRead: z.boolean(),
          canWrite: z.boolean(),
          presentationFormat: valueBytes.nullable(),
          userDescription: z.string().max(longestValueBytes).nullable(),
          validRange: valueBytes.nullable(),
        }),
      )
      .max(128),
  }),
  z.object({ type: z.literal('watching'), attempt }),
  z.object({ type: z.literal('proof'), attempt }),
  z.object({ type: z.literal('disconnected'), attempt }),
  z.object({
    type: z.literal('failed'),
    attempt,
    /** `listen-only`: it lets nobody connect. `pairing`: it asked for pairing, which failed. */
    step: z.enum(['search', 'listen-only', 'connect', 'discover', 'watch', 'start', 'pairing']),
  }),
  z.object({
    type: z.literal('notifications'),
    attempt,
    items: z.array(
      z.object({
        from: packetFromSchema,
        receivedAtMs: z.number(),
        /** Null when it was longer than the standard allows and was dropped. */
        bytes: valueBytes.nullable(),
        lengthBytes: z.number().int().min(0),
      }),
    ),
    /** Came faster than they could be passed on, and were dropped after these. */
    overrun: z.number().int().min(0),
  }),
  z.object({ type: z.literal('battery'), attempt, pct: z.number().min(0).max(100) }),
  z.object({
    type: z.literal('visited'),
    deviceId,
    values: z.array(z.object({ characteristicUuid: uuidSchema, bytes: valueBytes })).max(mostWatched),
    /** `refused`: the adapter or the device takes no connection beside the meter's, or did not answer. */
    failed: z.enum(['unheard', 'refused']).nullable(),
  }),
  /** A frame that the Bluetooth library could not read. */
  z.object({ type: z.literal('malformed') }),
]);
export type FromRadio = z.infer<typeof fromRadioSchema>;
