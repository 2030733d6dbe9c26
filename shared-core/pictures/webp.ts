import { bytesOf, joined, textAt } from './bytes.ts';
import { onlyOrientation, orientationIn } from './orientation.ts';
import type { CleanPicture } from './picture.ts';

// RFC 9649, sections 2 and 3.
const HEADER_BYTES = 12;
const NEEDED = /^(VP8 |VP8L|ALPH|ICCP|ANIM|ANMF)$/;
const EXIF_FLAG = 0x08;
const XMP_FLAG = 0x04;

export const isWebp = (bytes: Uint8Array): boolean =>
  textAt(bytes, 0, 4) === 'RIFF' && textAt(bytes, 8, 4) === 'WEBP';

/** A WebP without what does not belong to the picture; null where it is cut off or is none. */
export function cleanWebp(bytes: Uint8Array): CleanPicture | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = 8 + view.getUint32(4, true);
  if (end > bytes.length) return null;
  const parts: Uint8Array[] = [];
  let extended: Uint8Array | null = null;
  let size: Size | null = null;
  let orientation = 1;
  let at = HEADER_BYTES;
  while (at + 8 <= end) {
    const name = textAt(bytes, at, 4);
    const length = view.getUint32(at + 4, true);
    const content = bytes.subarray(at + 8, at + 8 + length);
    // Chunks begin at even places; the last may lack its padding.
    const next = at + 8 + length + (length % 2);
    if (at + 8 + length > end) return null;
    if (name === 'VP8X' && content.length >= 10) {
      extended = content.slice();
      size = { widthPx: 1 + threeBytes(content, 4), heightPx: 1 + threeBytes(content, 7) };
    } else if (name === 'VP8 ') size ??= sizeOfLossy(content);
    else if (name === 'VP8L') size ??= sizeOfLossless(content);
    else if (name === 'EXIF') {
      const isPrefixed = textAt(content, 0, 4) === 'Exif';
      orientation = orientationIn(content.subarray(isPrefixed ? 6 : 0));
    }
    if (NEEDED.test(name)) parts.push(chunk(name, content));
    at = next;
  }
  if (size === null || parts.length === 0) return null;
  if (extended) {
    extended[0] = ((extended[0] ?? 0) & ~(EXIF_FLAG | XMP_FLAG)) | (orientation === 1 ? 0 : EXIF_FLAG);
    parts.unshift(chunk('VP8X', extended));
    if (orientation !== 1) parts.push(chunk('EXIF', onlyOrientation(orientation)));
  }
  const body = joined(parts);
  const header = new Uint8Array(HEADER_BYTES);
  header.set(bytes.subarray(0, HEADER_BYTES));
  new DataView(header.buffer).setUint32(4, 4 + body.length, true);
  return { mediaType: 'image/webp', ...size, bytes: joined([header, body]) };
}

interface Size {
  widthPx: number;
  heightPx: number;
}

function chunk(name: string, content: Uint8Array): Uint8Array {
  const whole = new Uint8Array(8 + content.length + (content.length % 2));
  whole.set(bytesOf(name));
  new DataView(whole.buffer).setUint32(4, content.length, true);
  whole.set(content, 8);
  return whole;
}

const threeBytes = (bytes: Uint8Array, at: number): number =>
  (bytes[at] ?? 0) | ((bytes[at + 1] ?? 0) << 8) | ((bytes[at + 2] ?? 0) << 16);

/** RFC 6386, section 9.1. */
function sizeOfLossy(content: Uint8Array): Size | null {
  if (content.length < 10 || threeBytes(content, 3) !== 0x2a019d) return null;
  return { widthPx: threeBytes(content, 6) & 0x3fff, heightPx: threeBytes(content, 8) & 0x3fff };
}

/** RFC 9649, section 3.4. */
function sizeOfLossless(content: Uint8Array): Size | null {
  if (content.length < 5 || content[0] !== 0x2f) return null;
  return {
    widthPx: 1 + (threeBytes(content, 1) & 0x3fff),
    heightPx: 1 + ((threeBytes(content, 2) >> 6) & 0x3fff),
  };
}
