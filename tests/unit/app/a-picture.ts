import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Subject } from '../../../shared-core/contract/notes.ts';
import type { AWindow } from './a-window.ts';

type Asks = Pick<AWindow, 'command'>;

/** One of the small pictures made for tests. */
export const pictureFile = (name: string): Buffer =>
  readFileSync(join(import.meta.dirname, '../pictures/files', name));

/** Uploads a file and has it saved as a picture, as the window does. @returns its hash */
export async function takePicture(window: Asks, bytes: Uint8Array): Promise<string> {
  const { upload, file } = await window.command('backups.beginUpload', { sizeBytes: bytes.length });
  const base64 = Buffer.from(bytes).toString('base64');
  await window.command('backups.addToUpload', { upload, offset: 0, base64 });
  return (await window.command('pictures.take', { file })).contentHash;
}

/** Adds a picture of something. @returns its id */
export async function addPicture(
  window: Asks,
  subject: Subject,
  bytes: Uint8Array = pictureFile('board-end.jpg'),
  caption = 'Blue stain',
): Promise<{ id: number; contentHash: string }> {
  const contentHash = await takePicture(window, bytes);
  const thumbnail = pictureFile('board-end.jpg').toString('base64');
  const pictures = [{ contentHash, caption, thumbnail }];
  const { ids } = await window.command('pictures.add', { subject, pictures });
  return { id: ids[0]!, contentHash };
}
