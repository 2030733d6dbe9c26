import { bytesOf, joined, startsWith, textAt } from './bytes.ts';
import { onlyOrientation, orientationIn } from './orientation.ts';
import type { CleanPicture } from './picture.ts';

// PNG, third edition (W3C 2025), sections 5 and 11.
const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Chunks that a picture is drawn from. */
const NEEDED = /^(IHDR|PLTE|IDAT|IEND|tRNS|cHRM|gAMA|iCCP|sBIT|sRGB|cICP|mDCV|cLLI|bKGD|pHYs)$/;

export const isPng = (bytes: Uint8Array): boolean => startsWith(bytes, SIGNATURE);

/** A PNG without what does not belong to the picture; null where it is cut off. */
export function cleanPng(bytes: Uint8Array): CleanPicture | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts: Uint8Array[] = [];
  let orientation = 1;
  let at = SIGNATURE.length;
  while (at + 12 <= bytes.length) {
    const length = view.getUint32(at);
    const name = textAt(bytes, at + 4, 4);
    const next = at + 12 + length;
    if (next > bytes.length || (parts.length === 0) !== (name === 'IHDR')) return null;
    if (name === 'eXIf') orientation = orientationIn(bytes.subarray(at + 8, next - 4));
    if (NEEDED.test(name)) parts.push(bytes.subarray(at, next));
    if (name === 'IEND') {
      const [header, ...rest] = parts;
      if (header === undefined || header.length !== 25) return null;
      const turned = orientation === 1 ? [] : [exifChunk(orientation)];
      return {
        mediaType: 'image/png',
        widthPx: view.getUint32(SIGNATURE.length + 8),
        heightPx: view.getUint32(SIGNATURE.length + 12),
        bytes: joined([bytes.subarray(0, SIGNATURE.length), header, ...turned, ...rest]),
      };
    }
    at = next;
  }
  return null;
}

function exifChunk(orientation: number): Uint8Array {
  const content = onlyOrientation(orientation);
  const chunk = new Uint8Array(12 + content.length);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, content.length);
  chunk.set(bytesOf('eXIf'), 4);
  chunk.set(content, 8);
  view.setUint32(8 + content.length, crc32(chunk.subarray(4, 8 + content.length)));
  return chunk;
}

/** As PNG checks its chunks (annex D of the same). */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
