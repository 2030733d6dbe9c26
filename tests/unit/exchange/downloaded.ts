import { TRANSFER_PART_BYTES } from '../../../shared-core/contract/backups.ts';
import type { AWindow } from '../app/a-window.ts';

/** All bytes of what is ready for a window. */
export async function downloaded(
  { command }: Pick<AWindow, 'command'>,
  { download, sizeBytes }: { download: string; sizeBytes: number },
): Promise<Buffer> {
  const parts: Buffer[] = [];
  for (let offset = 0; offset < sizeBytes; offset += TRANSFER_PART_BYTES) {
    const { base64 } = await command('backups.nextOfDownload', { download, offset });
    parts.push(Buffer.from(base64, 'base64'));
  }
  return Buffer.concat(parts);
}
