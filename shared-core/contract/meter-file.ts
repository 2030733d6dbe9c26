import { z } from 'zod';
import {
  DESCRIPTION_VERSION,
  type MeterDescription,
  meterDescriptionSchema,
} from '../gatt/meter-description.ts';
import type { Outcome } from '../outcome.ts';
import { type MeterProfile, meterProfileSchema } from '../probing/readings/meter-profile.ts';
import { type Message, message } from '../words/message.ts';

/** What the file of a meter calls itself; its version is that of the description. */
export const METER_FORMAT = 'pintally-meter';
/** Many times what the longest description takes, bytes. */
export const MOST_METER_FILE_BYTES = 100_000;

/** How the values of a meter are read and what they mean, to be shared. What one device said of itself is not in it. */
export const meterFileSchema = z.object({
  format: z.literal(METER_FORMAT),
  version: z.literal(DESCRIPTION_VERSION),
  /** Null for a hand meter. */
  description: meterDescriptionSchema.omit({ version: true, identity: true }).nullable(),
  /** Null where nobody was asked. */
  profile: meterProfileSchema.nullable(),
});
export type MeterFile = z.infer<typeof meterFileSchema>;

/** The same as JSON Schema, draft 2020-12: no entry beyond these. */
export const meterJsonSchema = () => ({
  $id: `urn:${METER_FORMAT}:${DESCRIPTION_VERSION}`,
  ...z.toJSONSchema(meterFileSchema, { reused: 'ref' }),
});

export const meterFileOf = (description: MeterDescription | null, profile: MeterProfile | null): MeterFile =>
  meterFileSchema.parse({ format: METER_FORMAT, version: DESCRIPTION_VERSION, description, profile });

/** How a meter is read by its file; null where the file does not say. */
export const descriptionIn = ({ version, description }: MeterFile): MeterDescription | null =>
  description && { version, ...description };

/** The file, as it is written. */
export const meterFileText = (file: MeterFile): string => `${JSON.stringify(file, null, 2)}\n`;

/** @returns what a text says of a meter, or what is wrong with it */
export function readMeterFile(text: string): Outcome<MeterFile> {
  const given = jsonOf(text);
  const refused = (problem: Message): Outcome<MeterFile> => ({ ok: false, problem });
  if (!isRecord(given) || given.format !== METER_FORMAT) return refused(message('meter-file.not-one'));
  const { version } = given;
  if (typeof version === 'number' && version !== DESCRIPTION_VERSION) {
    return refused(
      message('meter-file.version', { version: String(version), readable: DESCRIPTION_VERSION }),
    );
  }
  const read = meterFileSchema.safeParse(given);
  if (!read.success) {
    const path = read.error.issues[0]?.path ?? [];
    return refused(message('meter-file.wrong', { entry: shown(path.map(String)) }));
  }
  const unknown = unknownEntry(given, read.data);
  if (unknown !== null) return refused(message('meter-file.unknown', { entry: shown(unknown) }));
  return { ok: true, value: read.data };
}

/** Where a text has an entry that was not read; null where it has none. */
function unknownEntry(given: unknown, read: unknown): string[] | null {
  if (!isRecord(given) || !isRecord(read)) return null;
  for (const [name, inside] of Object.entries(given)) {
    if (!Object.hasOwn(read, name)) return [name];
    const within = unknownEntry(inside, read[name]);
    if (within !== null) return [name, ...within];
  }
  return null;
}

/** An entry by its path, printable and short: its name may be anything. */
const shown = (path: string[]): string =>
  path
    .join('.')
    .replace(/[^\p{L}\p{N}\p{P}\p{S} ]/gu, '·')
    .slice(0, 60);

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
