import { TRANSFER_PART_BYTES } from '../../../shared-core/contract/backups.ts';
import { bridge } from '../../data/bridge.ts';
import { download } from '../../data/download.ts';

/** Told of how many parts are through. @returns whether to go on */
type OnPart = (done: number, total: number) => boolean;

/**
 * Sends a file that the browser gave, part by part.
 * @returns where the machine has it now; null where it was stopped
 */
export async function uploadFile(file: File, onPart: OnPart): Promise<string | null> {
  const { upload, file: path } = await bridge().command('backups.beginUpload', { sizeBytes: file.size });
  const total = Math.ceil(file.size / TRANSFER_PART_BYTES);
  for (let part = 0; part < total; part++) {
    if (!onPart(part, total)) return null;
    const offset = part * TRANSFER_PART_BYTES;
    const base64 = await base64Of(file.slice(offset, offset + TRANSFER_PART_BYTES));
    await bridge().command('backups.addToUpload', { upload, offset, base64 });
  }
  return path;
}

/** Has the browser save a checked copy of the yard. @returns whether it did: it may have been stopped */
export const downloadCopy = async (onPart: OnPart): Promise<boolean> =>
  downloadOffered(await bridge().command('backups.beginDownload', {}), 'application/vnd.sqlite3', onPart);

/** Has the browser save a file that the machine has ready. @returns whether it did: it may have been stopped */
export async function downloadOffered(
  { download: id, sizeBytes, fileName }: { download: string; sizeBytes: number; fileName: string },
  type: string,
  onPart: OnPart,
): Promise<boolean> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const total = Math.ceil(sizeBytes / TRANSFER_PART_BYTES);
  for (let part = 0; part < total; part++) {
    if (!onPart(part, total)) return false;
    const offset = part * TRANSFER_PART_BYTES;
    const { base64 } = await bridge().command('backups.nextOfDownload', { download: id, offset });
    parts.push(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)));
  }
  download(new Blob(parts, { type }), fileName);
  return true;
}

/** What is in a part of a file, as requests carry it. */
export function base64Of(part: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).replace(/^[^,]*,/, ''));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(part);
  });
}
