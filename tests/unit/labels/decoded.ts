import jsQR from 'jsqr';
import type { Raster } from './raster.ts';

/** What jsQR reads in a picture; null for nothing. */
export function decoded({ rgba, width, height }: Raster): string | null {
  return jsQR(rgba, width, height)?.data ?? null;
}
