import {
  BinaryBitmap,
  Code128Reader,
  GlobalHistogramBinarizer,
  NotFoundException,
  RGBLuminanceSource,
} from '@zxing/library';
import type { Raster } from './raster.ts';

/** What a Code 128 reader finds in a picture, going over it line by line; null for nothing. */
export function readBars({ rgba, width, height }: Raster): string | null {
  const gray = Uint8ClampedArray.from({ length: width * height }, (_, index) => rgba[4 * index] ?? 0);
  const bitmap = new BinaryBitmap(new GlobalHistogramBinarizer(new RGBLuminanceSource(gray, width, height)));
  try {
    return new Code128Reader().decode(bitmap, new Map([[3, true]])).getText();
  } catch (error) {
    if (error instanceof NotFoundException) return null;
    throw error;
  }
}
