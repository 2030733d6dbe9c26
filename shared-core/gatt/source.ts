import { z } from 'zod';

/** A Bluetooth UUID as noble writes it: lower case, no hyphens, 4 or 32 hex digits. */
export const uuidSchema = z
  .string()
  .regex(/^([0-9a-f]{4}|[0-9a-f]{32})$/, { error: 'meter.form.wrong.characteristic' });

/** Longest value that the Bluetooth standard allows an attribute (Core Specification, Vol 3 Part F 3.2.9). */
export const longestValueBytes = 512;

export const bytesHexSchema = z
  .string()
  .max(2 * longestValueBytes)
  .regex(/^([0-9a-f]{2})*$/);

const characteristicShape = { serviceUuid: uuidSchema, characteristicUuid: uuidSchema };
/** Service data of a 16-bit or 128-bit UUID; the packet is what comes after the UUID. */
const serviceDataSchema = z.object({ kind: z.literal('service-data'), serviceUuid: uuidSchema });
/** The packet is what comes after the company's number. */
const manufacturerDataSchema = z.object({
  kind: z.literal('manufacturer-data'),
  /** As the Bluetooth SIG assigned it. */
  companyId: z.number().int().min(0).max(0xffff),
});

/** Where a packet came from: a characteristic, or a part of what a device advertises. */
export const packetFromSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('characteristic'), ...characteristicShape }),
  serviceDataSchema,
  manufacturerDataSchema,
]);
export type PacketFrom = z.infer<typeof packetFromSchema>;

/** How the packets with the value are had. */
export const sourceSchema = z.discriminatedUnion('kind', [
  /** The meter sends them by itself, as notifications or indications. */
  z.object({ kind: z.literal('sent'), ...characteristicShape }),
  /** They are read from it again and again. */
  z.object({
    kind: z.literal('read'),
    ...characteristicShape,
    /** From one read to the next, ms. */
    everyMs: z.number().int().min(200).max(5000),
  }),
  serviceDataSchema,
  manufacturerDataSchema,
]);
export type Source = z.infer<typeof sourceSchema>;

/** Where the packets of a source come from. */
export function fromOf(source: Source): PacketFrom {
  if (source.kind !== 'sent' && source.kind !== 'read') return source;
  const { serviceUuid, characteristicUuid } = source;
  return { kind: 'characteristic', serviceUuid, characteristicUuid };
}

/** One text for each place that packets come from, for maps and lists. */
export function keyOfFrom(from: PacketFrom): string {
  switch (from.kind) {
    case 'characteristic':
      return `${from.serviceUuid} ${from.characteristicUuid}`;
    case 'service-data':
      return `service-data ${from.serviceUuid}`;
    case 'manufacturer-data':
      return `manufacturer-data ${from.companyId}`;
  }
}

/** Whether a packet came from this source. */
export const isFrom = (source: Source, from: PacketFrom): boolean =>
  keyOfFrom(fromOf(source)) === keyOfFrom(from);

/** Whether a meter with this source is only listened to, and never connected to. */
export const isAdvertised = ({ kind }: Source): boolean =>
  kind === 'service-data' || kind === 'manufacturer-data';
