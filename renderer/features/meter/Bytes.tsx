import { bytesOfHex } from '../../../shared-core/gatt/bytes-of-hex.ts';

/** Bytes as the contract writes them. */
export const hexOf = (bytes: Uint8Array): string =>
  [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** Bytes in hex; those that matter are marked by a frame as well as by color. */
export function Bytes({ hex, marked }: { hex: string; marked: (at: number) => boolean }) {
  return (
    <code className="bytes" translate="no">
      {[...bytesOfHex(hex)].map((byte, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a byte is its place.
        <span key={index} className={marked(index) ? 'byte byte-value' : 'byte'}>
          {byte.toString(16).padStart(2, '0')}
        </span>
      ))}
    </code>
  );
}

/** Whether a byte is in a place; `count` null: to the end. */
export const isIn =
  ({ from, count }: { from: number; count: number | null }) =>
  (at: number): boolean =>
    at >= from && (count === null || at < from + count);
