/** The bytes of "0a1b…" as the contract writes them. Anything odd at the end is left out. */
export function bytesOfHex(hex: string): Uint8Array {
  return Uint8Array.from(hex.match(/[0-9a-f]{2}/gi) ?? [], (pair) => Number.parseInt(pair, 16));
}

/** Bytes in hex; those that hold the value are marked by a frame as well as by color. `count` null: to the end. */
export function Bytes({ hex, from, count }: { hex: string; from: number; count: number | null }) {
  const bytes = [...bytesOfHex(hex)];
  const to = count === null ? bytes.length : from + count;
  return (
    <code className="bytes" translate="no">
      {bytes.map((byte, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a byte is its place.
        <span key={index} className={index >= from && index < to ? 'byte byte-value' : 'byte'}>
          {byte.toString(16).padStart(2, '0')}
        </span>
      ))}
    </code>
  );
}
