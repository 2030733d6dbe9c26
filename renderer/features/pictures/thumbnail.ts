import { MOST_THUMBNAIL_LETTERS, THUMBNAIL_PX } from '../../../shared-core/contract/pictures.ts';
import { base64Of } from '../backups/transfers.ts';

/** Of a JPEG, the best first. */
const QUALITIES = [0.8, 0.6, 0.4, 0.2];

/**
 * The small picture of a file, turned as the camera says.
 * @returns null where none is small enough
 * @throws  where the file cannot be shown as a picture
 */
export async function makeThumbnail(file: Blob): Promise<string | null> {
  const whole = await createImageBitmap(file);
  try {
    const scale = Math.min(1, THUMBNAIL_PX / Math.max(whole.width, whole.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(whole.width * scale));
    canvas.height = Math.max(1, Math.round(whole.height * scale));
    const pen = canvas.getContext('2d');
    if (pen === null) return null;
    pen.imageSmoothingQuality = 'high';
    // A JPEG is not transparent.
    pen.fillStyle = 'white';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(whole, 0, 0, canvas.width, canvas.height);
    for (const quality of QUALITIES) {
      const jpeg = await new Promise<Blob | null>((made) => canvas.toBlob(made, 'image/jpeg', quality));
      const base64 = jpeg && (await base64Of(jpeg));
      if (base64 && base64.length <= MOST_THUMBNAIL_LETTERS) return base64;
    }
    return null;
  } finally {
    whole.close();
  }
}
