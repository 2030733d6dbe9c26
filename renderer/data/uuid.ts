/** A new UUID (RFC 9562, version 4), also on a page where `crypto.randomUUID` is withheld as not secure. */
export function newUuid(): string {
  if ('randomUUID' in crypto) return crypto.randomUUID();
  const bytes = (crypto as Crypto).getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
  return [8, 12, 16, 20, 32].map((end, index, ends) => hex.slice(ends[index - 1] ?? 0, end)).join('-');
}
