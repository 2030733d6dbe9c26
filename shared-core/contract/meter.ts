import { z } from 'zod';
import { meterDescriptionSchema } from '../gatt/meter-description.ts';
import { meterProfileSchema } from '../probing/readings/meter-profile.ts';
import { readingUnitSchema } from '../wood/moisture/corrected.ts';
import { messageSchema } from '../words/message.ts';
import { radioWaySchema } from './radio-way.ts';
import { says } from './validation.ts';
import { nameSchema, rowIdSchema, versionSchema } from './yard.ts';

/** Shorter pins would read the surface only, mm. Common practice, no source. */
export const LEAST_PINS_MM = 2;

/** What a person tells of a hand meter, whose values are typed. */
export const typedMeterSchema = z.object({
  name: nameSchema,
  profile: meterProfileSchema.refine(
    ({ pins }) => (pins?.lengthMm ?? LEAST_PINS_MM) >= LEAST_PINS_MM,
    says('validation.pins-short'),
  ),
});

/** A meter of the yard, as a list shows it. */
export const meterOfYardSchema = z.object({
  id: rowIdSchema,
  version: versionSchema,
  /** `typed`: a hand meter. */
  kind: z.enum(['bluetooth', 'simulated', 'typed']),
  name: z.string(),
  unit: readingUnitSchema,
  /** What its values mean; null where it was not asked. */
  profile: meterProfileSchema.nullable(),
  /** Typed values are read off this one. */
  isTypedFrom: z.boolean(),
});
export type MeterOfYard = z.infer<typeof meterOfYardSchema>;

/** Whether somebody is still to be asked what its values mean; those of the simulated meter are made up. */
export const isToBeAsked = ({ kind, profile }: MeterOfYard): boolean =>
  profile === null && kind !== 'simulated';

export const foundDeviceSchema = z.object({
  deviceId: z.string(),
  /** Empty where it gives itself none. */
  name: z.string(),
  /** Signal strength; null when the adapter does not report it. */
  rssiDbm: z.number().nullable(),
  /** A meter of the yard, by its address. */
  isKnown: z.boolean(),
});
export type FoundDevice = z.infer<typeof foundDeviceSchema>;

/** A characteristic that the connected meter offers, for setting it up by hand on live bytes. */
export const offeredCharacteristicSchema = z.object({
  serviceUuid: z.string(),
  characteristicUuid: z.string(),
  canNotify: z.boolean(),
  canWrite: z.boolean(),
  userDescription: z.string().nullable(),
  /** The newest bytes seen, hex; null when none yet. */
  lastBytesHex: z.string().nullable(),
});
export type OfferedCharacteristic = z.infer<typeof offeredCharacteristicSchema>;

export const meterStateSchema = z.object({
  kind: z.enum(['none', 'bluetooth', 'simulated']),
  phase: z.enum([
    'idle',
    'scanning',
    'connecting',
    'discovering',
    'needs-description',
    'live',
    'reconnecting',
    'failed',
  ]),
  /** What is going on, for a person. */
  message: messageSchema,
  /** How the radio is reached; null where none is used. */
  radio: radioWaySchema.nullable(),
  /** Whether the simulated meter may be used: its values are made up, so only in the demo yard. */
  canSimulate: z.boolean(),
  /** The window that its values go to. */
  heldBy: z.enum(['this-window', 'another-window', 'nobody']),
  devices: z.array(foundDeviceSchema),
  deviceId: z.string().nullable(),
  deviceName: z.string().nullable(),
  /** The meter's row, once it is known how to read it. */
  meterId: rowIdSchema.nullable(),
  description: meterDescriptionSchema.nullable(),
  characteristics: z.array(offeredCharacteristicSchema),
  /** What was passed over among them, and why. */
  remarks: z.array(messageSchema),
  /** What a person has to say before anything of the meter is saved; null for nothing. */
  toConfirm: z
    .discriminatedUnion('what', [
      /**
       * It is not as it was. What does its display show: as read by `description`, or by `before` where that is another
       * number?
       */
      z.object({ what: z.literal('value'), before: meterDescriptionSchema.nullable() }),
      /**
       * No meter has its address, but these have its name and are read like it: which of them is it, if any? Or the meter of
       * its address has another name than `ownName`, by which it calls itself: is it the same, or one of that name?
       */
      z.object({
        what: z.literal('meter'),
        ownName: z.string().nullable(),
        sameAs: z.array(z.object({ meterId: rowIdSchema, meterName: z.string() })).min(1),
      }),
    ])
    .nullable(),
  batteryPct: z.number().min(0).max(100).nullable(),
  /** What it is set to for the species, its own number or word; null where it does not say. */
  speciesSetting: z.string().nullable(),
  /** Every notification accounted for: received = decoded + noReading + other + refused. */
  counts: z.object({
    received: z.number().int(),
    decoded: z.number().int(),
    /** Valid, but they mean that the meter has no reading, as with its pins in the air. */
    noReading: z.number().int(),
    /** Of another kind than those with the value. */
    other: z.number().int(),
    refused: z.number().int(),
    lastRefusal: messageSchema.nullable(),
  }),
});
export type MeterState = z.infer<typeof meterStateSchema>;
