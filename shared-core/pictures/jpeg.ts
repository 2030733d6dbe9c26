import { bytesOf, joined, startsWith, textAt } from './bytes.ts';
import { onlyOrientation, orientationIn } from './orientation.ts';
import type { CleanPicture } from './picture.ts';

// Markers of ITU-T T.81, table B.1.
const END = 0xd9;
const SCAN = 0xda;
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP2 = 0xe2;
const APP14 = 0xee;
const APP15 = 0xef;
const COMMENT = 0xfe;
const EXIF = 'Exif\0\0';

const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
const standsAlone = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);

/** What a decoder needs: no comments, and of the application's own segments only those of color. */
function isNeeded(marker: number, content: Uint8Array): boolean {
  if (marker === APP0 || marker === APP14) return true;
  if (marker === APP2) return textAt(content, 0, 11) === 'ICC_PROFILE';
  return marker !== COMMENT && !(marker >= APP0 && marker <= APP15);
}

export const isJpeg = (bytes: Uint8Array): boolean => startsWith(bytes, [0xff, 0xd8, 0xff]);

/** A JPEG without what does not belong to the picture; null where it is cut off or is none. */
export function cleanJpeg(bytes: Uint8Array): CleanPicture | null {
  const parts: Uint8Array[] = [];
  let size: { widthPx: number; heightPx: number } | null = null;
  let orientation = 1;
  let at = 2;
  while (at + 1 < bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] as number;
    // Fill bytes before a marker.
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === END) {
      if (size === null) return null;
      parts.push(bytes.subarray(at, at + 2));
      const turned = orientation === 1 ? [] : [exifSegment(orientation)];
      return { mediaType: 'image/jpeg', ...size, bytes: joined([bytes.subarray(0, 2), ...turned, ...parts]) };
    }
    if (standsAlone(marker)) {
      parts.push(bytes.subarray(at, at + 2));
      at += 2;
      continue;
    }
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    const next = at + 2 + length;
    if (length < 2 || next > bytes.length) return null;
    const content = bytes.subarray(at + 4, next);
    if (isFrame(marker)) {
      if (content.length < 5) return null;
      const [, high = 0, low = 0, wide = 0, narrow = 0] = content;
      size = { heightPx: (high << 8) | low, widthPx: (wide << 8) | narrow };
    }
    if (marker === APP1 && textAt(content, 0, EXIF.length) === EXIF) {
      orientation = orientationIn(content.subarray(EXIF.length));
    }
    const end = marker === SCAN ? endOfScan(bytes, next) : next;
    if (isNeeded(marker, content)) parts.push(bytes.subarray(at, end));
    at = end;
  }
  return null;
}

/** Where the next marker is after what is compressed: a 0xFF in there has a zero after it, or restarts. */
function endOfScan(bytes: Uint8Array, from: number): number {
  let at = from;
  for (;;) {
    at = bytes.indexOf(0xff, at);
    if (at < 0) return bytes.length;
    const after = bytes[at + 1] ?? 0;
    if (after !== 0 && !(after >= 0xd0 && after <= 0xd7)) return at;
    at += 2;
  }
}

function exifSegment(orientation: number): Uint8Array {
  const content = joined([bytesOf(EXIF), onlyOrientation(orientation)]);
  return joined([Uint8Array.of(0xff, APP1, 0, content.length + 2), content]);
}
