import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';

/** The width of the drawing, at the 72 dots an inch that an SVG usually has. */
const DRAWN = 28;
/** electron-builder makes the formats of Windows and macOS from the largest, and Linux takes each. */
const SIZES = [16, 32, 48, 64, 128, 256, 512, 1024];

/** Draws the window's icon in the sizes of desktops: `icon.png`, and `icons/NxN.png`. */
export async function drawIcons(root: string, folder: string): Promise<void> {
  mkdirSync(join(folder, 'icons'), { recursive: true });
  for (const size of SIZES) {
    // Drawn at that size, not enlarged.
    const drawn = sharp(join(root, 'renderer/icon.svg'), { density: (72 * size) / DRAWN }).resize(size, size);
    await drawn.png().toFile(join(folder, `icons/${size}x${size}.png`));
    if (size === SIZES.at(-1)) await drawn.png().toFile(join(folder, 'icon.png'));
  }
}
