/** The bytes of "0a1b…" as the contract writes them. Anything odd at the end is left out. */
export function bytesOfHex(hex: string): Uint8Array {
  return Uint8Array.from(hex.match(/[0-9a-f]{2}/gi) ?? [], (pair) => Number.parseInt(pair, 16));
}
