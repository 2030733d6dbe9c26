import { randomUUID } from 'node:crypto';
import { type FileHandle, open, readdir, rm, stat, statfs } from 'node:fs/promises';
import { join } from 'node:path';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { TRANSFER_PART_BYTES } from '../../../shared-core/contract/backups.ts';
import { message } from '../../../shared-core/words/message.ts';
import { LEAST_LEFT_BYTES, sizeOf } from '../../store/backup.ts';
import { makePrivateFolder } from '../../store/private-files.ts';
import type { Commands } from '../handlers.ts';
import { askBackup, type BackupThread, patienceFor } from './backup-tasks.ts';
import type { Yards } from './yards.ts';

const NAME = /^[0-9a-f-]{36}\.sqlite(\.pintally\.part)?(-\w+)?$/;

/** A file on its way from or to a window. */
interface Transfer {
  id: string;
  file: string;
  sizeBytes: number;
  opened: FileHandle;
  /** Bytes so far: each part follows the one before. */
  at: number;
}

/**
 * Copies of the yard for a window to download, and yard files that one uploads, part by part as requests like any
 * other: no other way leads into this process. One of each at a time. They lie beside the yard file until then.
 */
export function createTransfers(
  yards: Pick<Yards, 'toBackUp'>,
  thread: BackupThread,
  { dataDir, now }: { dataDir: string; now: () => string },
) {
  const folder = join(dataDir, 'transfers');
  let upload: Transfer | null = null;
  let download: Transfer | null = null;

  async function drop(transfer: Transfer | null): Promise<void> {
    await transfer?.opened.close().catch(() => undefined);
    if (transfer) await rm(transfer.file, { force: true });
  }
  async function dropUpload(): Promise<void> {
    const dropped = upload;
    upload = null;
    await drop(dropped);
  }
  async function dropDownload(): Promise<void> {
    const dropped = download;
    download = null;
    await drop(dropped);
  }

  async function refuseWithoutRoom(bytes: number): Promise<void> {
    const { bavail, bsize } = await statfs(folder);
    if (bavail * bsize < bytes + LEAST_LEFT_BYTES) {
      throw new Refusal(message('refusal.restore-no-room', { folder: dataDir }));
    }
  }

  const newFile = () => {
    makePrivateFolder(folder);
    const id = randomUUID();
    return { id, file: join(folder, `${id}.sqlite`), at: 0 };
  };

  return {
    /** Removes what an earlier process left. */
    clear: async (): Promise<void> => {
      const names = await readdir(folder).catch(() => []);
      const used = [upload, download].map((transfer) => transfer?.id);
      const left = names.filter((name) => NAME.test(name) && !used.includes(name.slice(0, 36)));
      await Promise.all(left.map((name) => rm(join(folder, name), { force: true })));
    },
    commands: {
      'backups.beginUpload': async ({ sizeBytes }) => {
        await dropUpload();
        const made = newFile();
        await refuseWithoutRoom(sizeBytes);
        upload = { ...made, sizeBytes, opened: await open(made.file, 'wx', 0o600) };
        return { upload: made.id, file: made.file };
      },
      'backups.addToUpload': async ({ upload: id, offset, base64 }) => {
        const to = upload;
        const bytes = Buffer.from(base64, 'base64');
        if (to?.id !== id || to.at !== offset || offset + bytes.length > to.sizeBytes) {
          throw new Refusal(message('refusal.upload-stopped'));
        }
        to.at += bytes.length;
        await to.opened.write(bytes, 0, bytes.length, offset);
        return null;
      },
      'backups.dropUpload': async () => {
        await dropUpload();
        return null;
      },
      'backups.beginDownload': async () => {
        const present = yards.toBackUp();
        if (present === null) throw new Refusal(message('refusal.backup-own-not-open'));
        await dropDownload();
        const made = newFile();
        const { file: from } = present;
        await askBackup(thread, 'copy', { from, target: made.file }, patienceFor(sizeOf(from)));
        const { size: sizeBytes } = await stat(made.file);
        download = { ...made, sizeBytes, opened: await open(made.file, 'r') };
        return { download: made.id, sizeBytes, fileName: `pintally-${now().slice(0, 10)}.sqlite` };
      },
      'backups.nextOfDownload': async ({ download: id, offset }) => {
        const from = download;
        if (from?.id !== id || offset !== from.at) throw new Refusal(message('refusal.download-stopped'));
        const bytes = Buffer.alloc(Math.min(TRANSFER_PART_BYTES, from.sizeBytes - offset));
        from.at += bytes.length;
        await from.opened.read(bytes, 0, bytes.length, offset);
        if (from.at === from.sizeBytes) await dropDownload();
        return { base64: bytes.toString('base64') };
      },
      'backups.dropDownload': async () => {
        await dropDownload();
        return null;
      },
    } satisfies Partial<Commands>,
    close: async (): Promise<void> => {
      await Promise.all([dropUpload(), dropDownload()]);
    },
  };
}
