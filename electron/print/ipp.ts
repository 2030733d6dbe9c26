/** Messages of the Internet Printing Protocol as bytes (RFC 8010, section 3, and RFC 8011, both from memory). */

/** Delimiters of groups of attributes, and what values are. */
const tags = {
  operation: 0x01,
  job: 0x02,
  end: 0x03,
  integer: 0x21,
  boolean: 0x22,
  enum: 0x23,
  text: 0x41,
  name: 0x42,
  keyword: 0x44,
  uri: 0x45,
  charset: 0x47,
  language: 0x48,
  mime: 0x49,
} as const;
const textWithLanguage = new Set([0x35, 0x36]);
/** Smaller tags begin a group. */
const FIRST_VALUE_TAG = 0x10;

/** Operations (RFC 8011, 5.4.15; those from 0x4000 on are of CUPS, as it answers them). */
export const operations = {
  printJob: 0x0002,
  cancelJob: 0x0008,
  jobAttributes: 0x0009,
  printers: 0x4002,
} as const;

/** What a request says, of the kinds that we send. */
export type Sent = readonly [
  kind: 'uri' | 'name' | 'keyword' | 'mime' | 'integer',
  name: string,
  ...values: (string | number)[],
];

function attribute(tag: number, name: string, values: readonly (string | number)[]): Buffer {
  return Buffer.concat(
    values.map((value, index) => {
      // More values of an attribute have no name.
      const named = Buffer.from(index === 0 ? name : '');
      const bytes = typeof value === 'number' ? fourBytes(value) : Buffer.from(value);
      return Buffer.concat([Buffer.of(tag), twoBytes(named.length), named, twoBytes(bytes.length), bytes]);
    }),
  );
}

function twoBytes(value: number): Buffer {
  const bytes = Buffer.alloc(2);
  bytes.writeUInt16BE(value);
  return bytes;
}

function fourBytes(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeInt32BE(value);
  return bytes;
}

/**
 * A request, before the document that it may bring.
 * @param job  attributes of the job to be made
 */
export function ippRequest(operation: number, asked: readonly Sent[], job: readonly Sent[] = []): Buffer {
  const said = (sent: readonly Sent[]) =>
    sent.map(([kind, name, ...values]) => attribute(tags[kind], name, values));
  return Buffer.concat([
    Buffer.of(2, 0),
    twoBytes(operation),
    fourBytes(1),
    Buffer.of(tags.operation),
    attribute(tags.charset, 'attributes-charset', ['utf-8']),
    attribute(tags.language, 'attributes-natural-language', ['en']),
    ...said(asked),
    ...(job.length > 0 ? [Buffer.of(tags.job), ...said(job)] : []),
    Buffer.of(tags.end),
  ]);
}

/** A value as far as we read it; empty for kinds that we do not. */
type Value = string | number | boolean;
/** The values of each attribute by its name. */
export type Attributes = ReadonlyMap<string, readonly Value[]>;

export interface IppAnswer {
  /** Under 0x0100 where it was done. */
  status: number;
  /** Of the printers and jobs that it tells of, in order. */
  groups: Attributes[];
}

const HEADER_BYTES = 8;
const VERSIONS = [1, 2];

/** @throws RangeError where it is none, or ends too early */
export function ippAnswer(bytes: Buffer): IppAnswer {
  if (!VERSIONS.includes(bytes.readUInt8(0))) throw new RangeError('This is no answer of IPP.');
  const status = bytes.readUInt16BE(2);
  const groups: Map<string, Value[]>[] = [];
  let group: Map<string, Value[]> = new Map();
  let values: Value[] = [];
  let at = HEADER_BYTES;
  while (at < bytes.length) {
    const tag = bytes.readUInt8(at++);
    if (tag === tags.end) break;
    if (tag < FIRST_VALUE_TAG) {
      group = new Map();
      if (tag !== tags.operation) groups.push(group);
      continue;
    }
    const nameLength = bytes.readUInt16BE(at);
    const name = bytes.toString('utf8', at + 2, at + 2 + nameLength);
    at += 2 + nameLength;
    const length = bytes.readUInt16BE(at);
    const value = bytes.subarray(at + 2, at + 2 + length);
    at += 2 + length;
    if (nameLength > 0) {
      values = [];
      group.set(name, values);
    }
    values.push(readValue(tag, value));
  }
  return { status, groups };
}

function readValue(tag: number, bytes: Buffer): Value {
  if (tag === tags.integer || tag === tags.enum) return bytes.readInt32BE(0);
  if (tag === tags.boolean) return bytes.readUInt8(0) === 1;
  if (textWithLanguage.has(tag)) {
    const language = bytes.readUInt16BE(0);
    return bytes.toString('utf8', 4 + language);
  }
  return tag >= tags.text ? bytes.toString('utf8') : '';
}
