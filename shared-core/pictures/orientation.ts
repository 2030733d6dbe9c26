/** The Exif tag of how a picture is turned, CIPA DC-008 (Exif 2.32), table 4. */
const ORIENTATION = 0x0112;
const SHORT = 3;
/** More entries than a camera writes: what has more is no list of tags. */
const MOST_TAGS = 1000;

/**
 * How the rows and columns of a picture are turned, 1 to 8 as Exif numbers them; 1, which is upright, where that cannot
 * be read.
 * @param tiff  an Exif block from its byte order on
 */
export function orientationIn(tiff: Uint8Array): number {
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  if (tiff.length < 8) return 1;
  const isLittle = view.getUint16(0) === 0x4949;
  if (!isLittle && view.getUint16(0) !== 0x4d4d) return 1;
  const start = view.getUint32(4, isLittle);
  if (start + 2 > tiff.length) return 1;
  const count = Math.min(view.getUint16(start, isLittle), MOST_TAGS);
  for (let entry = 0; entry < count; entry++) {
    const at = start + 2 + entry * 12;
    if (at + 12 > tiff.length) return 1;
    if (view.getUint16(at, isLittle) !== ORIENTATION || view.getUint16(at + 2, isLittle) !== SHORT) continue;
    const value = view.getUint16(at + 8, isLittle);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

/** An Exif block that says nothing but how a picture is turned. */
export const onlyOrientation = (orientation: number): Uint8Array =>
  Uint8Array.of(
    ...[0x4d, 0x4d, 0, 0x2a, 0, 0, 0, 8],
    ...[0, 1, ORIENTATION >> 8, ORIENTATION & 0xff, 0, SHORT, 0, 0, 0, 1, 0, orientation, 0, 0],
    ...[0, 0, 0, 0],
  );
