import { hash } from 'node:crypto';

/** The namespace of what is the same record in every yard: species, uses, meters. Made once, at random. */
export const EVERY_YARD = 'b6c0f1de-54a9-4f0e-9d3e-7a1c52c7e0a4';

/**
 * The UUID that a name has in a namespace (version 5, SHA-1): the same on every computer.
 *
 * @param namespace a UUID, as text
 * Source: RFC 9562, section 5.5.
 * @example uuidV5('6ba7b810-9dad-11d1-80b4-00c04fd430c8', 'www.example.com') // '2ed6657d-e927-568b-95e1-2665a8aea6a2'
 */
export function uuidV5(namespace: string, name: string): string {
  const named = Buffer.concat([Buffer.from(namespace.replaceAll('-', ''), 'hex'), Buffer.from(name)]);
  const bytes = hash('sha1', named, 'buffer').subarray(0, 16);
  bytes[6] = ((bytes[6] as number) & 0x0f) | 0x50;
  bytes[8] = ((bytes[8] as number) & 0x3f) | 0x80;
  const hex = bytes.toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
